// SPDX-License-Identifier: GPL-3.0-or-later
// Common-mode rejection of whole designs in the limits: a mirror image of itself converts nothing; a half turned about
// does, whichever of the two it is.
#include <gtest/gtest.h>

#include <cmath>

#include "mirrored.h"

namespace balance_test {

/// Raw rejection at the frequencies asked, dB.
std::vector<double> rejection(const design::Design& d, const std::vector<double>& frequencies) {
    const auto answer = analysis::answer(d, small::shop(), {}, {}, {"", frequencies, false});
    const auto* trace = answer->trace("balance");
    EXPECT_NE(trace, nullptr);
    return trace == nullptr ? std::vector<double>(frequencies.size(), std::nan("")) : trace->curves.front().y;
}

const std::vector<double> asked{50, 1e3, 20e3, 200e3};

TEST(BalanceOfADesign, TheMirrorImageOfItselfConvertsNothing) {
    for (const double decibels : rejection(small::mirrored(), asked)) EXPECT_GT(decibels, 180);
    for (const double decibels : rejection(small::mirrored(true, true), asked)) EXPECT_GT(decibels, 180);
}

TEST(BalanceOfADesign, NoMoreIsShownThanLeadOutsLeaveKnown) {
    const auto answer = analysis::answer(small::mirrored(), small::shop(), {}, {}, {"", asked, false});
    const auto* trace = answer->trace("balance");
    ASSERT_NE(trace, nullptr);
    for (const auto& curve : trace->curves) EXPECT_EQ(curve.knownTo, 80) << curve.name;
    EXPECT_EQ(trace->curves.front().shown(180), 80);
    EXPECT_EQ(trace->curves.front().shown(60), 60);
}

TEST(BalanceOfADesign, AHalfTurnedAboutConvertsWhicheverItIs) {
    const auto first = rejection(small::mirrored(true, false), asked),
               second = rejection(small::mirrored(false, true), asked);
    for (std::size_t k = 0; k < asked.size(); ++k) {
        EXPECT_LT(first[k], 130) << asked[k];
        EXPECT_NEAR(first[k], second[k], 1e-3) << asked[k];
    }
    // Where leakage does not count, what is converted goes with frequency: current through capacitance.
    EXPECT_NEAR(first[0] - first[1], 20 * std::log10(1e3 / 50), 1.0);
}

TEST(BalanceOfADesign, WhatATurnedHalfConvertsGoesWithTheSource) {
    // A current through unequal capacitances meets the legs' impedance: twice the source converts twice as much.
    auto d = small::mirrored(true, false);
    const double once = rejection(d, {1e3}).front();
    d.hookUps.front().ports.front().through->resistance = 1200;
    EXPECT_NEAR(once - rejection(d, {1e3}).front(), 20 * std::log10(2.0), 0.5);
}

}  // namespace balance_test
