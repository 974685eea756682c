// SPDX-License-Identifier: GPL-3.0-or-later
// ngspice (Debian package) run on a netlist as it stands, and what it wrote.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace ngspice {

namespace fs = std::filesystem;

inline const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

inline design::Design opened(const std::string& file) {
    const auto path = std::string(COILWRIGHT_SOURCE_DIR) + "/" + file;
    return *exchange::readDesign(exchange::readFile(path), path, shop()).design;
}

/// The reference coils and every demo design, by path below the sources.
inline std::vector<std::string> designs() {
    std::vector<std::string> all{"tests/references/open_1_shielded_step_up.coilwright",
                                 "tests/references/open_2_interleaved_line.coilwright",
                                 "tests/references/open_3_two_chambers.coilwright"};
    for (const auto& entry : fs::recursive_directory_iterator(COILWRIGHT_SOURCE_DIR "/demo-projects"))
        if (entry.path().extension() == ".coilwright")
            all.push_back(fs::relative(entry.path(), COILWRIGHT_SOURCE_DIR).string());
    std::sort(all.begin(), all.end());
    return all;
}

/// A path as the name of a test.
inline std::string testName(const std::string& path) {
    std::string name = fs::path(path).stem().string();
    std::replace_if(
        name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
    return name;
}

inline void replace(std::string& text, const std::string& what, const std::string& with) {
    const auto at = text.find(what);
    ASSERT_NE(at, std::string::npos) << what;
    text.replace(at, what.size(), with);
}

/// Runs the netlist and returns the rows of response.txt.
inline std::vector<std::vector<double>> rows(const std::string& netlist, const std::string& name) {
    const fs::path folder = fs::path(testing::TempDir()) / ("ngspice_" + name);
    fs::create_directories(folder);
    fs::remove(folder / "response.txt");
    exchange::writeFile((folder / "unit.cir").string(), netlist);
    const std::string command = "cd '" + folder.string() + "' && ngspice -b unit.cir > ngspice.log 2>&1";
    EXPECT_EQ(std::system(command.c_str()), 0) << folder;
    const std::string text = exchange::readFile((folder / "response.txt").string());
    std::vector<std::vector<double>> all(1);
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] == '\n') all.emplace_back();
        if (text[at] == ' ' || text[at] == '\n' || text[at] == '\t' || text[at] == '+') {
            ++at;
            continue;
        }
        double value = 0;
        const auto read = std::from_chars(text.data() + at, text.data() + text.size(), value);
        if (read.ec != std::errc()) {
            ADD_FAILURE() << "no number: " << text.substr(at, 20);
            break;
        }
        all.back().push_back(value);
        at = static_cast<std::size_t>(read.ptr - text.data());
    }
    std::erase_if(all, [](const auto& row) { return row.empty(); });
    return all;
}

/// The example with the angle, degrees, beside the level.
inline std::string withAngle(std::string netlist) {
    const auto from = netlist.find("let level = db(", netlist.rfind(".control\nset")) + 15;
    const auto end = netlist.find(")\nwrdata", from);
    replace(netlist, "wrdata response.txt level\nquit 0\n.endc\n.end\n",
            "wrdata response.txt level angle\nquit 0\n.endc\n.end\n");
    return netlist.insert(end + 2, "let angle = cph(" + netlist.substr(from, end - from) + ")*180/pi\n");
}

/// How far a netlist says that it is from the program's own solution of a hook-up to 1 MHz.
struct Said {
    double level = 0, angle = 0;  ///< dB, degrees
};
inline Said said(const std::string& netlist, const std::string& hookUp) {
    const std::string head = "* hook-up " + hookUp + ": within ";
    const auto found = netlist.find(head);
    EXPECT_NE(found, std::string::npos) << hookUp;
    if (found == std::string::npos) return {};
    const auto at = netlist.find(" kHz, ", found) + 6, next = netlist.find(" and ", at) + 5;
    Said read;
    std::from_chars(netlist.data() + at, netlist.data() + netlist.size(), read.level);
    std::from_chars(netlist.data() + next, netlist.data() + netlist.size(), read.angle);
    return read;
}

struct Off {
    std::size_t points = 0;
    double level = 0, angle = 0;   ///< dB, degrees
    double levelOutsideNulls = 0;  ///< dB, where the response is above -60 dB
};
/// The example's response against the program's own at the same frequencies.
template <class Write>
Off against(const design::Design& d, const std::string& hookUp, const std::string& name, const Write& write) {
    analysis::Question question;
    question.hookUp = hookUp;
    question.everyHookUp = false;
    const auto first = analysis::answer(d, shop(), nullptr, {}, question);
    const auto got = rows(withAngle(write(d, *first)), name);
    for (const auto& row : got) question.frequencies.push_back(row.at(0));
    const auto answered = analysis::answer(d, shop(), first, {}, question);
    const auto* trace = answered->trace("response");
    Off off{got.size(), 0, 0, 0};
    for (std::size_t k = 0; k < got.size(); ++k) {
        const double own = trace->curves[0].y[k], apart = std::abs(own - got[k].at(1));
        off.level = std::max(off.level, apart);
        if (own > -60) off.levelOutsideNulls = std::max(off.levelOutsideNulls, apart);
        off.angle = std::max(off.angle, std::abs(std::remainder(trace->curves[1].y[k] - got[k].at(2), 360)));
    }
    return off;
}

/// The same of a file that says how near it is, with what it says.
struct Told {
    Off off;
    Said said;
};
template <class Write>
Told againstAndTold(const design::Design& d, const std::string& hookUp, const std::string& name, const Write& write) {
    Told told;
    told.off = against(d, hookUp, name, [&](const auto& one, const auto& answer) {
        const std::string text = write(one, answer);
        told.said = said(text, hookUp);
        return text;
    });
    return told;
}

}  // namespace ngspice
