// SPDX-License-Identifier: GPL-3.0-or-later
// Units without papers are told from the readings that a bench can take of them.
#include "learn/match.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>
#include <numeric>

#include "analysis/in_threads.h"
#include "demos.h"
#include "design/edit.h"
#include "drawn.h"

namespace match_test {

using drawn::Normals;

const std::vector<std::string> names{"microphone-input", "direct-box", "ribbon-step-up", "line-unit", "splitter"};

design::DesignPtr withTurns(const design::Design& design, double factor) {
    return design::changed(design, [&](design::Design& d) {
        for (auto& place : d.coil)
            for (auto& item : place.order)
                if (auto* section = item.section()) section->turns.value = std::round(section->turns * factor);
    });
}

/// The demos, and of each one wound with a sixth fewer turns.
const std::vector<learn::Known>& shelf() {
    static const std::vector<learn::Known> all = [] {
        std::vector<learn::Known> made;
        for (const auto& name : names) {
            const auto& design = demos::demo(name);
            made.push_back({name, analysis::answer(design, demos::shopCatalog())->figures});
            const auto fewer = withTurns(design, 5.0 / 6);
            made.push_back({name + ", fewer turns", analysis::answer(*fewer, demos::shopCatalog())->figures});
        }
        return made;
    }();
    return all;
}

bool isRead(const std::string& name) {
    for (const char* kind : {"dcr.", "ratio.", "inductance_1kHz.", "leakage_10kHz."})
        if (name.starts_with(kind)) return true;
    return false;
}

/// What a bench reads of a unit to one per cent, windings called by numbers.
std::vector<spread::FigureRead> read(const design::Design& unit, const std::function<double()>& normals) {
    std::map<std::string, std::string> called;
    for (const auto& winding : unit.windings) called[winding.name] = "w" + std::to_string(9 - called.size());
    std::vector<spread::FigureRead> all;
    const auto answer = analysis::answer(unit, demos::shopCatalog());
    for (const auto& figure : answer->figures) {
        if (!isRead(figure.name) || !std::isfinite(figure.value)) continue;
        std::string name;
        std::size_t from = figure.name.find('.');
        name = figure.name.substr(0, from);
        while (from != std::string::npos) {
            const std::size_t to = figure.name.find('.', from + 1);
            name += "." + called.at(figure.name.substr(from + 1, to == std::string::npos ? to : to - from - 1));
            from = to;
        }
        const double doubt = 0.01 * std::abs(figure.value);
        all.push_back({name, figure.value + normals() * doubt / 2, doubt});
    }
    return all;
}

TEST(Match, AThousandUnitsAreOfTheirOwnDesign) {
    const auto& known = shelf();
    std::map<std::string, spread::Variation> variations;
    for (const auto& name : names)
        variations.emplace(name, spread::variationOf(demos::demo(name), demos::shopCatalog(),
                                                     shop::benchTolerances(plans::tolerances())));
    const auto count = static_cast<std::size_t>(drawn::thousand());
    std::vector<int> first(count), among(count), fitting(count);
    analysis::inThreads(count, 0, {}, [&] {
        return [&](std::size_t k) {
            Normals normals(71 + 977 * k);
            const auto& name = names[k % names.size()];
            const auto unit = drawn::unitOf(variations.at(name), normals);
            const auto found = learn::matched(known, read(unit, [&] { return normals(); }));
            for (const auto& match : found) {
                if (match.fits) ++fitting[k];
                if (match.fits && known[match.known].name == name) among[k] = 1;
            }
            first[k] = known[found.front().known].name == name ? 1 : 0;
        };
    });
    const auto sum = [](const std::vector<int>& all) { return std::accumulate(all.begin(), all.end(), 0); };
    std::cout << count << " units: " << sum(among) << " fit their own design, " << sum(first) << " of them first, "
              << static_cast<double>(sum(fitting)) / static_cast<double>(count) << " of " << known.size()
              << " designs fit a unit\n";
    EXPECT_GE(sum(among), 0.95 * static_cast<double>(count));
    EXPECT_GE(sum(first), 0.9 * static_cast<double>(count));
}

TEST(Match, WindingsMayHaveOtherNames) {
    const auto& design = demos::demo("microphone-input");
    const auto readings = read(design, [] { return 0.0; });  // P is w9, S is w8
    const auto found = learn::matched(shelf(), readings);
    EXPECT_EQ(shelf()[found.front().known].name, "microphone-input");
    EXPECT_NEAR(found.front().distance, 0, 1e-9);
    EXPECT_NEAR(found.front().probability, 1, 1e-9);
    const std::vector<std::pair<std::string, std::string>> called{{"w8", "S"}, {"w9", "P"}};
    EXPECT_EQ(found.front().names, called);
    // The other way round a ratio is its inverse, and a leakage is seen from the other side.
    const double ratio = analysis::answer(design, demos::shopCatalog())->figure("ratio.P.S")->value;
    std::vector<spread::FigureRead> turned = readings;
    for (auto& one : turned) {
        if (one.figure == "ratio.w9.w8") one = {"ratio.w8.w9", 1 / one.value, 0.01 / one.value};
        if (one.figure == "leakage_10kHz.w9.w8")
            one = {"leakage_10kHz.w8.w9", one.value * ratio * ratio, one.doubt * ratio * ratio};
    }
    EXPECT_NE(turned, readings);
    const auto again = learn::matched(shelf(), turned);
    EXPECT_EQ(shelf()[again.front().known].name, "microphone-input");
    EXPECT_NEAR(again.front().distance, 0, 1e-9);
    EXPECT_TRUE(again.front().lacking.empty());
}

/// One reading three standard deviations off: chi-squared of one degree beyond 9 has 0.0027 (tables of the normal law).
TEST(Match, TheDistanceIsChiSquared) {
    const std::vector<learn::Known> one{{"d", {{"low_3dB", 10, "Hz", 0.2, "", true, "", "", {}}}}};
    const double deviation = std::hypot(0.1, 0.005);
    const auto found = learn::matched(one, {{"low_3dB", 10 * std::exp(3 * deviation), 0.1 * std::exp(3 * deviation)}});
    EXPECT_NEAR(found.front().distance, 9, 1e-9);
    EXPECT_NEAR(found.front().probability, 0.0026998, 1e-6);
    EXPECT_TRUE(found.front().fits);
    EXPECT_NEAR(found.front().held.front().deviations, 3, 1e-9);
    const auto far = learn::matched(one, {{"low_3dB", 10 * std::exp(4 * deviation), 0.1 * std::exp(4 * deviation)}});
    EXPECT_FALSE(far.front().fits);
    const auto nothing = learn::matched(one, {{"gain_1kHz", 3, 0.1}});
    EXPECT_FALSE(nothing.front().fits);
    EXPECT_EQ(nothing.front().lacking, std::vector<std::string>{"gain_1kHz"});
}

/// Two inductances that are both off by their materials' uncertainty are less strange than an inductance and a
/// capacitance: by the closed form of a 2 by 2 matrix.
TEST(Match, FiguresOfOneKindErrAlike) {
    const auto figure = [](const char* name) { return units::Figure{name, 1, "H", 0.2, "", true, "", "", {}}; };
    const auto distance = [&](const char* other) {
        const std::vector<learn::Known> one{{"d", {figure("inductance_10Hz.P"), figure(other)}}};
        const double y = std::exp(0.2), d = 1e-6 * y;
        return learn::matched(one, {{"inductance_10Hz.P", y, d}, {other, y, d}}).front().distance;
    };
    EXPECT_NEAR(distance("low_3dB"), 2 * 4, 1e-3);
    EXPECT_NEAR(distance("inductance_1kHz.P"), 2 * 4 / 1.8, 1e-3);
}

TEST(Match, TheReadingThatPartsTwoIsNamed) {
    const auto& known = shelf();
    const auto next = learn::parting(known[0], known[1], {});
    ASSERT_TRUE(next);
    EXPECT_GT(next->deviations, 2);
    const auto without = learn::parting(known[0], known[1], {{next->figure, next->first, 0}});
    EXPECT_TRUE(!without || without->figure != next->figure);
    EXPECT_FALSE(learn::parting(known[0], known[0], {}));
}

}  // namespace match_test
