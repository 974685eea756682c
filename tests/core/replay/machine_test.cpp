// SPDX-License-Identifier: GPL-3.0-or-later
// The winders that come with the program, as both sides read them; and where a winder's name leads.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "winding_cases.h"

namespace machine_test {

using namespace winding_cases;

TEST(Winders, BothSidesReadTheSame) {
    for (const char* name : winders) {
        const auto& [w, m] = both(name);
        EXPECT_EQ(m.title, w.title);
        EXPECT_EQ(m.spindles, w.spindles);
        EXPECT_EQ(m.mostBlocks, w.maximumBlocks);
        EXPECT_EQ(m.inches, w.unit == exchange::ProgramUnit::Inch);
        EXPECT_EQ(m.point, w.decimalPoint);
        EXPECT_EQ(m.turnsRun, w.counter.running);
        EXPECT_EQ(m.turnsDecimals, w.counter.decimals);
        EXPECT_EQ(m.traverse.has_value(), w.traverse.has_value());
        EXPECT_EQ(m.depth.has_value(), w.depth.has_value());
        EXPECT_EQ(m.pitchDecimals, w.pitchDecimals);
        EXPECT_EQ(m.clockwise, w.codes.clockwise);
        EXPECT_EQ(m.end, w.codes.end);
        EXPECT_EQ(m.wraps, w.pinWrap ? w.pinWrap->wraps : 0);
        EXPECT_EQ(m.thinWire, w.thinWire);
        EXPECT_EQ(m.clearance, w.clearance);
        EXPECT_NE(w.note.find("Invented"), std::string::npos);
    }
}

TEST(Winders, AShopsOwnRulesOverTheProgramsOwn) {
    const std::filesystem::path own = std::filesystem::path(COILWRIGHT_BUILD_DIR) / "winders-of-a-shop";
    std::filesystem::create_directories(own / "winders");
    std::ofstream(own / "winders" / "six-spindle.json") << "{}";
    std::ofstream(own / "winders" / "bench-4.json") << "{}";
    const std::string resources = COILWRIGHT_SOURCE_DIR "/resources";
    const std::vector<std::string> folders{resources, own.string()};
    EXPECT_EQ(exchange::winderFile("six-spindle", folders), (own / "winders/six-spindle.json").string());
    EXPECT_EQ(exchange::winderFile("hand-guided", folders), resources + "/winders/hand-guided.json");
    EXPECT_EQ(exchange::winderFile("/elsewhere/mine.json", folders), "/elsewhere/mine.json");
    EXPECT_EQ(exchange::winderNames(folders),
              (std::vector<std::string>{"bench-4", "hand-guided", "single-traverse", "six-spindle"}));
    try {
        static_cast<void>(exchange::winderFile("six", folders));
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_STREQ(bad.what(),
                     "command line: --winder: found \"six\"; allowed is bench-4, hand-guided, single-traverse, "
                     "six-spindle, or the path of a .json file.");
    }
}

}  // namespace machine_test
