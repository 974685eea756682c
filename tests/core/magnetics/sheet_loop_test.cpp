// SPDX-License-Identifier: GPL-3.0-or-later
// Loops of single alloys: initial curve, Rayleigh's law, coercivity and remanence, minor loops.
#include "magnetics/sheet_loop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "shipped_alloys.h"

namespace sheet_loop_test {

using magnetics::mu0;
using magnetics::PlayMemory;
using magnetics::SheetLoop;
using magnetics::StackBlock;

double fluxAt(const SheetLoop& loop, const PlayMemory& memory, double field) {
    return loop.at(memory, field).value;
}

PlayMemory driven(const SheetLoop& loop, std::initializer_list<double> fields) {
    PlayMemory memory;
    for (const double field : fields) loop.follow(memory, field);
    return memory;
}

/// Where the branch that falls from the end of the curve passes zero.
double coercivity(const SheetLoop& loop, double end) {
    const PlayMemory memory = driven(loop, {end});
    double low = -end, high = 0;
    for (int round = 0; round < 100; ++round) {
        const double middle = (low + high) / 2;
        (fluxAt(loop, memory, middle) < 0 ? low : high) = middle;
    }
    return -high;
}

TEST(SheetLoop, OfEveryAlloyHasItsCoercivityAndRemanence) {
    for (const auto& [key, alloy] : sample::shipped().alloys) {
        const SheetLoop loop(sample::sheets(key));
        ASSERT_TRUE(loop.hysteretic()) << key;
        EXPECT_EQ(loop.why(), "") << key;
        const double end = alloy.curve.back().field;
        EXPECT_NEAR(coercivity(loop, end) / alloy.coercivity, 1, 1e-4) << key;
        EXPECT_NEAR(fluxAt(loop, driven(loop, {end}), 0) / alloy.remanence, 1, 1e-4) << key;
        EXPECT_NEAR(loop.remanence() / alloy.remanence, 1, 1e-4) << key;
    }
}

TEST(SheetLoop, StartsOnTheCurveOfTheAlloy) {
    for (const auto& [key, alloy] : sample::shipped().alloys) {
        const SheetLoop loop(sample::sheets(key));
        for (const catalog::BhPoint& point : alloy.curve)
            EXPECT_NEAR(loop.fromRest(point.field).value, point.flux, 1e-9) << key;
    }
}

/// Loop of Rayleigh's law: IEC 60050-221, 221-03-32 (read).
TEST(SheetLoop, FollowsRayleighsLawInSmallFields) {
    for (const auto& [key, alloy] : sample::shipped().alloys) {
        const SheetLoop loop(sample::sheets(key));
        const double peak = alloy.curve[1].field / 10, initial = alloy.initialPermeability, nu = alloy.rayleigh;
        const PlayMemory memory = driven(loop, {peak});
        for (const double share : {-1.0, -0.6, 0.0, 0.3, 0.9}) {
            const double field = share * peak;
            const double rayleigh = mu0 * ((initial + nu * peak) * field + nu / 2 * (peak * peak - field * field));
            EXPECT_NEAR(fluxAt(loop, memory, field), rayleigh, 2e-3 * mu0 * nu * peak * peak) << key << ' ' << share;
        }
    }
}

TEST(SheetLoop, SlopeIsTheDerivative) {
    const SheetLoop loop(sample::sheets("nickel-80"));
    const PlayMemory memory = driven(loop, {3.0, -1.0, 0.8});
    for (const double field : {-0.9, -0.3, 0.4, 1.5, 2.9, 5.0, 60.0}) {
        const double step = 1e-5;
        const double slope = (fluxAt(loop, memory, field + step) - fluxAt(loop, memory, field - step)) / (2 * step);
        EXPECT_NEAR(loop.at(memory, field).slope / slope, 1, 2e-4) << field;
    }
}

TEST(SheetLoop, MinorLoopsClose) {
    const SheetLoop loop(sample::sheets("silicon-oriented"));
    const double start = fluxAt(loop, driven(loop, {100, -20, 10}), 10);
    EXPECT_EQ(fluxAt(loop, driven(loop, {100, -20, 10, -5, 3, -2, 3, -5, 10}), 10), start);
    // Once closed, the loop leaves no trace.
    EXPECT_EQ(fluxAt(loop, driven(loop, {100, -20, 10, -5, 10}), 30), fluxAt(loop, driven(loop, {100, -20}), 30));
}

TEST(SheetLoop, FallingAlternationDemagnetises) {
    const SheetLoop loop(sample::sheets("nickel-50"));
    PlayMemory memory = driven(loop, {500});
    for (double peak = 400; peak > 1e-4; peak *= 0.995) {
        loop.follow(memory, -peak);
        loop.follow(memory, peak);
    }
    loop.follow(memory, 0);
    EXPECT_LT(std::abs(fluxAt(loop, memory, 0)), 1e-3 * loop.remanence());
}

TEST(SheetLoop, WithoutCoercivityThereIsNoLoop) {
    StackBlock block = sample::sheets("nickel-80");
    block.coercivity = 0;
    const SheetLoop loop(block);
    EXPECT_FALSE(loop.hysteretic());
    for (const double field : {-40.0, -0.7, 0.01, 2.0})
        EXPECT_EQ(fluxAt(loop, driven(loop, {30, -10}), field), loop.fromRest(field).value);
}

/// On every closed loop the falling branch lies above the rising one (the loop's area, the energy lost, is the integral
/// of the distance), and flux rises and falls with the field: 10^5 random drives.
TEST(SheetLoop, RandomDrivesNeverGainEnergy) {
    std::vector<SheetLoop> loops;
    std::vector<double> scales;
    for (const auto& [key, alloy] : sample::shipped().alloys) {
        loops.emplace_back(sample::sheets(key));
        scales.push_back(alloy.coercivity);
    }
    std::mt19937_64 dice(42);
    std::uniform_real_distribution<double> even(-1, 1), size(-2, 1.5);
    int gains = 0, falls = 0, open = 0;
    for (int drive = 0; drive < 100000; ++drive) {
        const std::size_t which = static_cast<std::size_t>(drive) % loops.size();
        const SheetLoop& loop = loops[which];
        const double reach = scales[which] * std::pow(10.0, size(dice));
        PlayMemory memory;
        for (int step = 0; step < 3; ++step) loop.follow(memory, reach * even(dice));
        const double high = reach, low = reach * even(dice), between = low + (high - low) * 0.37;
        loop.follow(memory, high);
        const double top = fluxAt(loop, memory, high), falling = fluxAt(loop, memory, between);
        loop.follow(memory, low);
        const double bottom = fluxAt(loop, memory, low), rising = fluxAt(loop, memory, between);
        const double again = fluxAt(loop, memory, high);
        const double rounding = 1e-13 * std::max(std::abs(top), std::abs(bottom));
        if (falling < rising - rounding) ++gains;
        if (!(top >= falling && falling >= bottom && rising >= bottom && top >= rising - rounding)) ++falls;
        if (!(std::abs(again - top) <= rounding)) ++open;
    }
    EXPECT_EQ(gains, 0);
    EXPECT_EQ(falls, 0);
    EXPECT_EQ(open, 0);
}

}  // namespace sheet_loop_test
