// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>

#include "units/fault.h"
#include "units/kind.h"
#include "units/text.h"

namespace level_gauge_kind_test {

using units::Kind;

TEST(Level, AgreesWithPublishedVolts) {
    EXPECT_NEAR(units::voltsOfDbu(0), 0.7745967, 1e-7);   // row N-DBU, seen: published as 0.7746 V
    EXPECT_NEAR(units::voltsOfDbu(4), 1.227653, 1e-6);    // row N-4, seen: published as 1.228 V
    EXPECT_NEAR(units::voltsOfDbu(24), 12.276530, 1e-5);  // row N-24, derived; half of the last digit is 5e-7 of 12 V
    EXPECT_NEAR(units::dbuOfVolts(1), 2.218487, 1e-6);    // row N-DBV, derived
    for (double level = -120; level <= 40; level += 0.37)
        EXPECT_NEAR(units::dbuOfVolts(units::voltsOfDbu(level)), level, 1e-12);
}

TEST(Gauge, AgreesWithPublishedDiameters) {
    EXPECT_NEAR(units::awgDiameter(36), 0.1270e-3, 1e-18);                             // row W-AWG-36, seen
    EXPECT_NEAR(units::awgDiameter(-3), 11.684e-3, 1e-15);                             // row W-AWG-4/0, seen
    EXPECT_NEAR(units::awgDiameter(20) / units::awgDiameter(21), 1.1229321965, 1e-9);  // row W-AWG-r, derived
    EXPECT_NEAR(units::awgDiameter(30) / units::awgDiameter(36), 2.0050315, 1e-7);     // row W-AWG-6, derived
    // Seen in stored text as lg d[in] = -0.4883027 - 0.0503535 n: seven decimals of each, so 2e-6 in the logarithm.
    for (double gauge = 14; gauge <= 50; ++gauge)
        EXPECT_NEAR(std::log10(units::awgDiameter(gauge) / 0.0254), -0.4883027 - 0.0503535 * gauge, 4e-6) << gauge;
    for (double gauge = -3; gauge <= 56; gauge += 0.5)
        EXPECT_NEAR(units::awgOfDiameter(units::awgDiameter(gauge)), gauge, 1e-12);
}

TEST(KindOfQuantity, UnitsGoBothWays) {
    for (int i = 0; i <= static_cast<int>(Kind::CurrentNoise); ++i) {
        const auto kind = static_cast<Kind>(i);
        const bool pure = kind == Kind::Count || kind == Kind::Turns || kind == Kind::Number || kind == Kind::Share;
        EXPECT_EQ(units::unit(kind).empty(), pure);
        EXPECT_EQ(units::kindOfUnit(units::unit(kind)), pure ? Kind::Number : kind);
    }
    EXPECT_EQ(units::unit(Kind::Resistance), "ohm");
    EXPECT_EQ(units::kindOfUnit("Hz"), Kind::Frequency);
    EXPECT_EQ(units::kindOfUnit("furlong"), Kind::Number);
}

TEST(Fault, IsOneSentence) {
    const units::BadInput bad({"step-up.coilwright: /windings/1/turns", "-40", "a whole number from 1 to 20000"});
    EXPECT_STREQ(bad.what(),
                 "step-up.coilwright: /windings/1/turns: found -40; allowed is a whole number from 1 to 20000.");
}

TEST(Step, SuitsTheKind) {
    struct Row {
        Kind kind;
        double value;
        int steps;
        double factor, expected;
    };
    const Row rows[] = {
        {Kind::Resistance, 4700, 1, 1, 5100},
        {Kind::Resistance, 4700, -1, 1, 4300},
        {Kind::Resistance, 9100, 1, 1, 10000},
        {Kind::Resistance, 10000, -1, 1, 9100},
        {Kind::Resistance, 4800, 1, 1, 5100},
        {Kind::Resistance, 4800, -1, 1, 4700},
        {Kind::Resistance, 9500, 1, 1, 10000},
        {Kind::Resistance, 9500, -1, 1, 9100},
        {Kind::Resistance, 4700, 24, 1, 47000},
        {Kind::Resistance, 4700, 1, 0.1, 4710},
        {Kind::Resistance, 1000, 1, 10, 2700},
        {Kind::Resistance, 0, 1, 1, 1},
        {Kind::Resistance, 0, -1, 1, 0},
        {Kind::Capacitance, 2.2e-9, 1, 1, 2.4e-9},
        {Kind::Inductance, 1e-3, -1, 1, 9.1e-4},
        {Kind::Turns, 1200, 1, 1, 1201},
        {Kind::Turns, 12.5, 1, 1, 13},
        {Kind::Turns, 12.5, -1, 1, 12},
        {Kind::Turns, 1200, 1, 10, 1210},
        {Kind::Turns, 12, 1, 0.1, 12.5},
        {Kind::Turns, 0, -1, 1, 0},
        {Kind::Count, 3, 1, 0.1, 4},
        {Kind::Frequency, 1000, 1, 1, 2000},
        {Kind::Frequency, 2000, 1, 1, 5000},
        {Kind::Frequency, 5000, 1, 1, 10000},
        {Kind::Frequency, 1000, -1, 1, 500},
        {Kind::Frequency, 3000, -1, 1, 2000},
        {Kind::Length, 1e-4, 1, 1, 1.1e-4},
        {Kind::Length, 0.035, 1, 1, 0.036},
        {Kind::Length, 0.035, 1, 10, 0.04},
        {Kind::Length, 0.035, -1, 0.1, 0.0348},
        {Kind::LevelDbu, 4, 1, 1, 5},
        {Kind::LevelDbu, 0, -1, 1, -1},
        {Kind::LevelDbu, 4, 1, 0.1, 4.1},
        {Kind::Temperature, 20, 1, 10, 30},
        {Kind::Share, 0.2, 1, 1, 0.21},
        {Kind::Share, 1, 1, 1, 1},
        {Kind::Decibel, -3, -1, 1, -4},
    };
    for (const Row& row : rows)
        EXPECT_EQ(units::stepped(row.kind, row.value, row.steps, row.factor), row.expected)
            << row.value << " by " << row.steps << " x " << row.factor;
}

}  // namespace level_gauge_kind_test
