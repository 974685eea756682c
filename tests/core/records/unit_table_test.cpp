// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of units read, written and read again, and refused with every fault.
#include "records/unit_table.h"

#include <gtest/gtest.h>

#include "made_units.h"
#include "units/fault.h"

namespace unit_table_test {

using records::readUnits;

std::vector<std::string> faultsOf(const std::string& text) {
    try {
        (void)readUnits(text, "u.csv");
    } catch (const units::BadInput& bad) {
        std::vector<std::string> all;
        for (const auto& fault : bad.faults) all.push_back(units::sentence(fault));
        return all;
    }
    return {};
}

TEST(UnitTable, ColumnsInAnyOrderWithUnits) {
    const auto units = readUnits(
        "# invented\nserial,dcr P [kohm],part,lot wire,initials wind,verdict,time,inductance [mH],thd [%],note\n"
        "7,0.0452,T-1,W3,ab,pass,2026-11-27T14:05,12500,0.1,\"well, good\"\n"
        "8,,T-1,,,,2026-11-27,NaN,,\n",
        "u.csv");
    ASSERT_EQ(units.size(), 2U);
    EXPECT_EQ(units[0].serial, "7");
    EXPECT_EQ(units[0].lots, (std::vector<records::Named>{{"wire", "W3"}}));
    EXPECT_EQ(units[0].initials, (std::vector<records::Named>{{"wind", "ab"}}));
    EXPECT_EQ(units[0].note, "well, good");
    ASSERT_EQ(units[0].readings.size(), 3U);
    EXPECT_EQ(units[0].readings[0].unit, "ohm");
    EXPECT_NEAR(units[0].readings[0].value, 45.2, 1e-12);
    EXPECT_EQ(units[0].readings[1].unit, "H");
    EXPECT_NEAR(units[0].readings[1].value, 12.5, 1e-12);
    EXPECT_EQ(units[0].readings[2].unit, "%");
    EXPECT_TRUE(units[1].readings.empty());
}

TEST(UnitTable, SemicolonsAndDecimalCommas) {
    const auto units = readUnits("serial;dcr P [ohm];ratio []\n1;45,25;4.002\n", "u.csv");
    EXPECT_EQ(units.at(0).readings.at(0).value, 45.25);
    EXPECT_EQ(units[0].readings.at(1).value, 4.002);
}

TEST(UnitTable, WhatIsWrittenReadsTheSame) {
    auto units = made::units(0, 50);
    units[3].note = "said \"loud\", then quiet";
    units[4].readings.clear();
    units[5].lots.clear();
    EXPECT_EQ(readUnits(records::unitTable(units), "u.csv"), units);
    EXPECT_EQ(readUnits(records::unitTable({}), "u.csv").size(), 0U);
}

TEST(UnitTable, EveryFaultIsTold) {
    EXPECT_EQ(
        faultsOf("serial,verdict,time,dcr [ohm]\n,pass,2026-11-27,1\n1,good,,2\n2,,27.11.2026,x\n3,,,4,5\n"),
        (std::vector<std::string>{"u.csv: line 2: found no serial; allowed is one for each unit.",
                                  "u.csv: line 3: found verdict \"good\"; allowed is pass, fail, or nothing.",
                                  "u.csv: line 4, column 4 (dcr [ohm]): found \"x\"; allowed is a number, or nothing.",
                                  "u.csv: line 4: found \"27.11.2026\"; allowed is a time as 2026-11-27T14:05.",
                                  "u.csv: line 5: found 5 cells; allowed is 4 at most."}));
    EXPECT_EQ(faultsOf(""), (std::vector<std::string>{"u.csv: line 0: found no line of column names; allowed is a line "
                                                      "with serial and other names."}));
    EXPECT_EQ(
        faultsOf("serial,serial\n"),
        (std::vector<std::string>{"u.csv: line 1, column 2 (serial): found a column twice; allowed is each once."}));
    EXPECT_EQ(faultsOf("part,dcr\n"),
              (std::vector<std::string>{
                  "u.csv: line 1, column 2 (dcr): found \"dcr\"; allowed is part, revision, serial, stage, time, "
                  "verdict, symptom, finding, cause, note, lot WHAT, initials STEP, or a test with its unit, as dcr P "
                  "[ohm].",
                  "u.csv: line 1: found no column serial; allowed is one that tells units apart."}));
}

TEST(UnitTable, DaysOfTimes) {
    EXPECT_EQ(records::dayOf("1970-01-02"), 1.0);
    EXPECT_EQ(records::dayOf("2000-03-01T12:00"), 11017.5);
    EXPECT_EQ(records::dayOf("2000-03-01T12:00:00"), 11017.5);
    for (const char* wrong : {"2026-02-30", "2026-13-01", "2026-11-27T24:00", "2026-11-27 14:05", "26-11-27", ""})
        EXPECT_FALSE(records::dayOf(wrong)) << wrong;
}

TEST(UnitTable, AnyBytesAreReadOrRefused) {
    std::mt19937 random(23);
    const std::string sound = records::unitTable(made::units(0, 5));
    int refused = 0;
    for (int k = 0; k < 3000; ++k) {
        std::string text = sound;
        for (int n = 0; n < 3; ++n) text[random() % text.size()] = static_cast<char>(random() % 256);
        try {
            (void)readUnits(text, "u.csv");
        } catch (const units::BadInput& bad) {
            ++refused;
            ASSERT_TRUE(bad.faults.front().place.starts_with("u.csv: line ")) << bad.what();
        }
    }
    EXPECT_GT(refused, 100);
}

}  // namespace unit_table_test
