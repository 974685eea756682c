// SPDX-License-Identifier: GPL-3.0-or-later
// Our solution against an independent circuit solver: ngspice (Debian package) runs the exported netlist as it stands.
#include "exchange/netlist.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>

#include <cmath>
#include <cstdlib>
#include <filesystem>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "json/text.h"

namespace {

namespace fs = std::filesystem;

struct Deviation {
    std::size_t points = 0;
    double worst = 0;
};

/// Proximity and dielectric loss are switched off on both sides: the netlist has neither.
Deviation againstNgspice(design::Design d, const catalog::Catalog& shop, const std::string& hookUp) {
    d.assumptions.proximity = false;
    d.assumptions.dielectricLoss = false;
    analysis::Question question;
    question.hookUp = hookUp;
    const auto first = analysis::answer(d, shop, nullptr, {}, question);
    const fs::path folder = fs::path(testing::TempDir()) / ("ngspice_" + d.name + hookUp);
    fs::create_directories(folder);
    fs::remove(folder / "response.txt");
    exchange::writeFile((folder / "unit.cir").string(), exchange::netlist(d, *first));
    const std::string command = "cd '" + folder.string() + "' && ngspice -b unit.cir > ngspice.log 2>&1";
    EXPECT_EQ(std::system(command.c_str()), 0);
    std::string text = exchange::readFile((folder / "response.txt").string());
    std::vector<double> numbers;
    for (std::size_t at = 0; at < text.size();) {
        const auto end = text.find_first_of(" \n\t", at);
        if (end > at) {
            double value = 0;
            std::from_chars(text.data() + at + (text[at] == '+' ? 1 : 0), text.data() + end, value);
            numbers.push_back(value);
        }
        if (end == std::string::npos) break;
        at = end + 1;
    }
    for (std::size_t k = 0; k < numbers.size(); k += 2) question.frequencies.push_back(numbers[k]);
    const auto ours = analysis::answer(d, shop, first, {}, question);
    const auto& level = ours->trace("response")->curves.front().y;
    Deviation deviation{question.frequencies.size(), 0};
    for (std::size_t k = 0; k < deviation.points; ++k)
        deviation.worst = std::max(deviation.worst, std::abs(level[k] - numbers[2 * k + 1]));
    return deviation;
}

class NetlistOf : public testing::TestWithParam<std::string> {};

TEST_P(NetlistOf, NgspiceAgreesFrom10HzTo1MHz) {
    const auto shop = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    const auto file = std::string(COILWRIGHT_SOURCE_DIR) + "/" + GetParam();
    const auto opened = exchange::readDesign(exchange::readFile(file), file, shop);
    for (const auto& hookUp : opened.design->hookUps) {
        const auto deviation = againstNgspice(*opened.design, shop, hookUp.name);
        EXPECT_EQ(deviation.points, 201U) << hookUp.name;
        EXPECT_LT(deviation.worst, 0.02) << hookUp.name;
    }
}

std::vector<std::string> designs() {
    std::vector<std::string> all{"tests/references/open_1_shielded_step_up.coilwright",
                                 "tests/references/open_2_interleaved_line.coilwright",
                                 "tests/references/open_3_two_chambers.coilwright"};
    for (const auto& entry : fs::recursive_directory_iterator(COILWRIGHT_SOURCE_DIR "/demo-projects"))
        if (entry.path().extension() == ".coilwright")
            all.push_back(fs::relative(entry.path(), COILWRIGHT_SOURCE_DIR).string());
    std::sort(all.begin(), all.end());
    return all;
}

INSTANTIATE_TEST_SUITE_P(Designs, NetlistOf, testing::ValuesIn(designs()), [](const auto& tried) {
    std::string name = fs::path(tried.param).stem().string();
    std::replace_if(
        name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
    return name;
});

TEST(Netlist, ImpedanceTableIsRefusedInWords) {
    const auto file = std::string(COILWRIGHT_SOURCE_DIR) + "/tests/references/open_2_interleaved_line.coilwright";
    auto d = *exchange::readDesign(exchange::readFile(file), file, {}).design;
    auto& use = d.hookUps.front().ports.front();
    use.through.reset();
    use.table = {{10, 600, 0}, {1e6, 600, 10}};
    const auto answer = analysis::answer(d, {});
    try {
        (void)exchange::netlist(d, *answer);
        FAIL() << "an impedance table has no SPICE element";
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(bad.what(),
                  "hook-up " + d.hookUps.front().name +
                      ": found a port with an impedance table; allowed is ports with R, L and C for a netlist.");
    }
}

}  // namespace
