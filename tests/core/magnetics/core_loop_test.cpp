// SPDX-License-Identifier: GPL-3.0-or-later
// Stacks in a large field: joints, mixed alloys, energy.
#include "magnetics/core_loop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "shipped_alloys.h"

namespace core_loop_test {

using magnetics::CoreLoop;
using magnetics::CoreModel;
using magnetics::mu0;

CoreModel stack(std::initializer_list<std::pair<const char*, double>> parts, double gap = 5e-6) {
    design::Design design = sample::core(parts);
    design.core.gap = gap;
    return magnetics::coreModel(design, sample::shipped());
}

/// Mean flux density along a way of applied fields from rest.
std::vector<double> along(const CoreLoop& loop, const std::vector<double>& applied) {
    CoreLoop::Memory memory = loop.atRest();
    std::vector<double> flux;
    for (const double field : applied) flux.push_back(loop.follow(memory, field).value);
    return flux;
}

const std::vector<double> way{0.2, 1, 5, 40, 300, 20, -3, -10, 2, -60, -250, 0, 100};

TEST(CoreLoop, StartsWithTheStacksInductance) {
    for (const double gap : {0.0, 1e-6, 5e-6, 60e-6})
        for (const auto& core : {stack({{"nickel-80", 1}}, gap), stack({{"silicon-non-oriented", 1}}, gap),
                                 stack({{"silicon-oriented", 0.7}, {"nickel-80", 0.3}}, gap)}) {
            const double lambda = magnetics::turnInductance(core, 0).real();
            EXPECT_NEAR(CoreLoop(core).initialSlope() * core.area / core.pathLength / lambda, 1, 1e-9) << gap;
        }
}

TEST(CoreLoop, OfTwoEqualPartsIsThatOfOne) {
    const std::vector<double> whole = along(CoreLoop(stack({{"nickel-50", 1}})), way);
    const std::vector<double> halves = along(CoreLoop(stack({{"nickel-50", 0.35}, {"nickel-50", 0.65}})), way);
    for (std::size_t i = 0; i < way.size(); ++i) EXPECT_NEAR(halves[i], whole[i], 1e-9) << way[i];
}

TEST(CoreLoop, SharesOfNoneAndAllAreThePureStacks) {
    const std::vector<double> pure = along(CoreLoop(stack({{"nickel-80", 1}})), way);
    EXPECT_EQ(along(CoreLoop(stack({{"nickel-80", 1}, {"silicon-oriented", 0}})), way), pure);
    EXPECT_EQ(along(CoreLoop(stack({{"silicon-oriented", 0}, {"nickel-80", 1}})), way), pure);
}

TEST(CoreLoop, OfAMixedStackLiesBetweenItsParts) {
    const std::vector<double> nickel = along(CoreLoop(stack({{"nickel-80", 1}})), way);
    const std::vector<double> steel = along(CoreLoop(stack({{"silicon-oriented", 1}})), way);
    const std::vector<double> mixed = along(CoreLoop(stack({{"nickel-80", 0.4}, {"silicon-oriented", 0.6}})), way);
    for (std::size_t i = 0; i < way.size(); ++i)
        EXPECT_NEAR(mixed[i], 0.4 * nickel[i] + 0.6 * steel[i], 1e-9) << way[i];
}

TEST(CoreLoop, GapTakesItsShareOfTheField) {
    CoreModel core = stack({{"nickel-50", 1}}, 20e-6);
    core.lapBreak = core.lapLength = 0;
    const CoreLoop gapped(core);
    core.gap = 0;
    const magnetics::SheetLoop sheets(core.blocks.at(0));
    CoreLoop::Memory memory = gapped.atRest();
    magnetics::PlayMemory alone;
    for (const double field : {2.0, 15.0, 80.0, -4.0, 6.0, -30.0}) {
        sheets.follow(alone, field);
        const double flux = sheets.at(alone, field).value;
        const double applied = field + 20e-6 * flux / (mu0 * core.pathLength);
        EXPECT_NEAR(gapped.follow(memory, applied).value, flux, 1e-10) << field;
    }
}

/// Neighbours at the laps carry twice the flux: the apparent permeability bends near half the saturation.
TEST(CoreLoop, InterleavedJointsBendAtHalfTheSaturation) {
    CoreModel core = stack({{"nickel-80", 1}});
    const auto differential = [](const CoreLoop& loop, double flux) {
        CoreLoop::Memory memory = loop.atRest();
        magnetics::CurvePlace place;
        for (double field = 0.01; place.value < flux; field *= 1.005) place = loop.follow(memory, field);
        return place.slope;
    };
    const CoreLoop laps(core);
    core.lapBreak = core.lapLength = 0;
    const CoreLoop plain(core);
    const double saturation = core.blocks[0].saturation;
    EXPECT_NEAR(differential(laps, 0.3 * saturation) / differential(plain, 0.3 * saturation), 1, 0.1);
    EXPECT_LT(differential(laps, 0.6 * saturation) / differential(plain, 0.6 * saturation), 0.5);
}

TEST(CoreLoop, WaveAndFieldLeadToTheSamePlace) {
    for (const auto& core : {stack({{"nickel-80", 1}}), stack({{"silicon-oriented", 0.7}, {"nickel-80", 0.3}})}) {
        const CoreLoop loop(core);
        CoreLoop::Memory byField = loop.atRest(), byWave = loop.atRest();
        const double weight = 0.02;
        for (const double field : way) {
            const double flux = loop.follow(byField, field).value;
            EXPECT_NEAR(loop.followWave(byWave, flux + weight * field, weight).value, flux, 1e-9) << field;
            EXPECT_NEAR(byWave.applied, field, 1e-8 * std::max(1.0, std::abs(field))) << field;
        }
    }
}

/// Loss of Rayleigh's loop: (4/3) mu0 nu H^3 a cycle (IEC 60050-221, 221-03-32 integrated; derived).
TEST(CoreLoop, AreaOfASmallLoop) {
    const CoreModel core = sample::pureStack("nickel-80");
    const CoreLoop loop(core);
    CoreLoop::Memory memory = loop.atRest();
    const double peak = 1e-3;
    std::vector<double> field, flux;
    loop.follow(memory, peak);
    for (int i = 0; i < 400; ++i) {
        field.push_back(peak * std::cos(2 * std::numbers::pi * i / 400));
        flux.push_back(loop.follow(memory, field.back()).value);
    }
    const double rayleigh = 4.0 / 3 * mu0 * core.blocks[0].rayleigh * peak * peak * peak;
    EXPECT_NEAR(magnetics::loopArea(field, flux) / rayleigh, 1, 1e-3);
}

TEST(CoreLoop, RandomDrivesOfMixedStacksStayFiniteAndLossy) {
    const CoreLoop loop(stack({{"silicon-oriented", 0.5}, {"nickel-80", 0.3}, {"cobalt-49", 0.2}}));
    std::mt19937_64 dice(7);
    std::uniform_real_distribution<double> size(-3, 4), phase(0, 6.28);
    for (int drive = 0; drive < 100; ++drive) {
        const double peak = std::pow(10.0, size(dice)), third = phase(dice);
        CoreLoop::Memory memory = loop.atRest();
        std::vector<double> field, flux;
        for (int i = 0; i < 4096; ++i) {
            const double t = 2 * std::numbers::pi * i / 2048;
            const double applied = peak * (std::sin(t) + 0.7 * std::sin(3 * t + third));
            const double reached = loop.follow(memory, applied).value;
            ASSERT_TRUE(std::isfinite(reached));
            if (i < 2048) continue;
            field.push_back(applied);
            flux.push_back(reached);
        }
        EXPECT_GT(magnetics::loopArea(field, flux), 0) << peak;
    }
}

}  // namespace core_loop_test
