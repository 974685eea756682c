// SPDX-License-Identifier: GPL-3.0-or-later
// What coils on both legs of a core leave of a uniform field's hum, and what a can does to it.
#include "analysis/hum.h"

#include <gtest/gtest.h>

#include "analysis/most_rejection.h"
#include "mirrored.h"
#include "units/text.h"

namespace hum_test {

constexpr double mains = 50;

/// S with `first` and `second` turns outside on the legs; nothing loads.
design::Design twoLegs(double first, double second, bool reversed = false) {
    auto d = small::mirrored();
    d.coil[0].order[2].section()->turns = first;
    d.coil[1].order[2].section()->turns = second;
    d.coil[1].order[2].section()->reversed = !reversed;
    for (auto& port : d.hookUps.front().ports) port.through->resistance = 1e9;
    return d;
}

analysis::HumPickup pickupOf(const design::Design& d) {
    const auto answer = analysis::answer(d, small::shop());
    const auto pickup = analysis::humPickup(*answer->stages->solved.at("normal"), *answer->stages, mains);
    EXPECT_TRUE(pickup.has_value());
    return pickup.value_or(analysis::HumPickup{});
}

TEST(Hum, EqualCoilsOnTwoLegsCancel) {
    const auto pickup = pickupOf(twoLegs(600, 600));
    EXPECT_GT(pickup.apart(), 0);
    EXPECT_LT(pickup.left(), 1e-9 * pickup.apart());
}

TEST(Hum, UnequalCoilsLeaveTheDifferenceOfTheirTurns) {
    for (const double second : {599.0, 580.0, 300.0}) {
        const auto pickup = pickupOf(twoLegs(600, second));
        EXPECT_NEAR(pickup.left() / pickup.apart(), (600 - second) / (600 + second), 3e-4) << second;
    }
}

TEST(Hum, AReversedCoilAddsUp) {
    const auto pickup = pickupOf(twoLegs(600, 600, true));
    EXPECT_NEAR(pickup.left() / pickup.apart(), 1, 1e-6);
}

TEST(Hum, WhatIsCancelledIsKnownToFortyDecibels) {
    const auto answer = analysis::answer(twoLegs(600, 600), small::shop());
    const auto* cancelled = answer->figure("hum_cancelled");
    ASSERT_NE(cancelled, nullptr);
    EXPECT_TRUE(analysis::isOverMost(*cancelled));
    EXPECT_EQ(cancelled->value, analysis::mostHumCancelled);
    EXPECT_NE(cancelled->why.find("over 40 dB"), std::string::npos) << cancelled->why;
    // The level is that of a hundredth of one coil's and the other's pickup together, 1 uT.
    const double most = units::dbuOfVolts(1e-6 * 0.01 * pickupOf(twoLegs(600, 600)).apart());
    EXPECT_NEAR(small::validFigure(twoLegs(600, 600), "hum_1uT_50Hz"), most, 1e-6);
    EXPECT_FALSE(analysis::isOverMost(*analysis::answer(twoLegs(600, 580), small::shop())->figure("hum_cancelled")));
}

TEST(Hum, ACanLowersItByItsScreening) {
    auto bare = small::transformer(), canned = bare;
    canned.core.cans = {{0.08, 0.5e-3, 20e3, {}}, {0.1, 0.5e-3, 20e3, {}}};
    const double screening = small::validFigure(canned, "screening_50Hz");
    EXPECT_GT(screening, 40);
    EXPECT_NEAR(small::validFigure(bare, "hum_1uT_50Hz") - small::validFigure(canned, "hum_1uT_50Hz"), screening, 1e-9);
}

TEST(Hum, IsThatOfTheTurnsOnTheTongueWhereNothingLoads) {
    // Faraday: 2 pi f B of the flux that links a turn, times the turns; the open primary stands in for no load.
    auto d = small::transformer();
    d.hookUps[0].ports[0].through->resistance = 1e9;
    d.hookUps[0].ports[1].through->resistance = 1e9;
    const auto answer = analysis::answer(d, small::shop());
    const auto& stages = *answer->stages;
    const double flux = analysis::legFlux(*stages.build, analysis::fieldPermeability(*stages.core, mains)).first;
    EXPECT_NEAR(pickupOf(d).left() / (2 * M_PI * mains * flux * 376), 1, 2e-3);
}

}  // namespace hum_test
