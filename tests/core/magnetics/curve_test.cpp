// SPDX-License-Identifier: GPL-3.0-or-later
// Flux density against field: on an alloy's curve, and in a stack with joints.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "sample_stack.h"

namespace curve_test {

using magnetics::CoreModel;
using magnetics::StackBlock;

StackBlock silicon() {
    return magnetics::coreModel(sample::core({{"silicon", 1}}), sample::shop()).blocks.at(0);
}

TEST(FluxAtField, GoesThroughThePointsOfTheCurve) {
    const StackBlock block = silicon();
    for (const catalog::BhPoint& point : block.curve)
        EXPECT_NEAR(magnetics::fluxAtField(block, point.field), point.flux, 1e-15);
}

TEST(FluxAtField, IsOdd) {
    for (const double field : {0.0, 3.0, 400.0, 1e6})
        EXPECT_EQ(magnetics::fluxAtField(silicon(), -field), -magnetics::fluxAtField(silicon(), field));
}

TEST(FluxAtField, RisesLikeAirBeyondTheLastPoint) {
    const StackBlock block = silicon();
    const double rise = magnetics::fluxAtField(block, 5e6) - magnetics::fluxAtField(block, 4e6);
    EXPECT_NEAR(rise, magnetics::mu0 * 1e6, 1e-12);
}

TEST(FluxAtField, HasNoCornerAtThePoints) {
    const StackBlock block = silicon();
    for (const catalog::BhPoint& point : block.curve) {
        if (point.field == 0) continue;
        const double step = 1e-6 * point.field;
        const double before = (point.flux - magnetics::fluxAtField(block, point.field - step)) / step;
        const double after = (magnetics::fluxAtField(block, point.field + step) - point.flux) / step;
        EXPECT_NEAR(before / after, 1, 1e-3) << point.field;
    }
}

TEST(FluxAtField, StartsWithTheInitialPermeability) {
    EXPECT_NEAR(magnetics::fluxAtField(silicon(), 1e-6) / (magnetics::mu0 * 1e-6), 500, 1e-3);
}

TEST(FluxAtField, IsAStraightLineThroughPointsOnOne) {
    // Slope 2 throughout, up to the last point, where the curve turns into air.
    StackBlock block;
    block.initialPermeability = 2 / magnetics::mu0;
    block.curve = {{0, 0}, {1, 2}, {3, 6}, {4, 8}};
    EXPECT_NEAR(magnetics::fluxAtField(block, 0.5), 1, 1e-14);
    EXPECT_NEAR(magnetics::fluxAtField(block, 2.25), 4.5, 1e-14);
}

TEST(FluxAtField, WithoutSaturationIsAStraightLine) {
    StackBlock block;
    block.initialPermeability = 1000;
    EXPECT_NEAR(magnetics::fluxAtField(block, 1e5), magnetics::mu0 * 1000 * 1e5, 1e-9);
}

TEST(FluxAtField, AirIsAir) {
    StackBlock block;
    block.saturation = 1;
    EXPECT_NEAR(magnetics::fluxAtField(block, 1e5), magnetics::mu0 * 1e5, 1e-12);
}

StackBlock randomBlock(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0, 1);
    StackBlock block;
    block.initialPermeability = std::pow(10, 5 * unit(random));
    block.saturation = 0.5 + 2 * unit(random);
    if (unit(random) < 0.2) return block;
    catalog::BhPoint point;
    block.curve.push_back(point);
    const int points = 1 + static_cast<int>(20 * unit(random));
    for (int i = 0; i < points; ++i) {
        point.field += std::pow(10, 5 * unit(random) - 2);
        point.flux += std::pow(10, 4 * unit(random) - 4);
        block.curve.push_back(point);
    }
    return block;
}

TEST(FluxAtField, RisesOnAnyRisingCurve) {
    std::mt19937 random(20240);
    for (int round = 0; round < 300; ++round) {
        const StackBlock block = randomBlock(random);
        double before = 0;
        for (double field = 1e-3; field < 1e6; field *= 1.05) {
            const double flux = magnetics::fluxAtField(block, field);
            ASSERT_GT(flux, before) << "round " << round << " at " << field;
            before = flux;
        }
    }
}

TEST(BlockFlux, PathAndJointsTakeTheWholeMagnetomotiveForce) {
    std::mt19937 random(7);
    CoreModel core;
    core.pathLength = 0.1;
    for (int round = 0; round < 100; ++round) {
        const StackBlock block = randomBlock(random);
        core.gap = std::pow(10.0, -6.0 + round % 4);
        for (const double iron : {0.01, 1.0, 50.0, 3000.0}) {
            const double flux = magnetics::fluxAtField(block, iron);
            const double applied = iron + flux * core.gap / (magnetics::mu0 * core.pathLength);
            ASSERT_NEAR(magnetics::blockFlux(core, block, applied) / flux, 1, 1e-9) << round << " " << iron;
            ASSERT_NEAR(magnetics::blockFlux(core, block, -applied) / flux, -1, 1e-9);
        }
    }
}

TEST(MeanFlux, StartsWithTheInductance) {
    const CoreModel core = magnetics::coreModel(sample::core({{"nickel-80", 0.5}, {"nickel-50", 0.5}}), sample::shop());
    const double field = 1e-5;
    const double fromInductance = magnetics::turnInductance(core, 0).real() * field * core.pathLength / core.area;
    EXPECT_NEAR(magnetics::meanFlux(core, field) / fromInductance, 1, 1e-6);
}

TEST(MeanFlux, ASaturatedBlockLeavesTheRestToTheOther) {
    const CoreModel core = magnetics::coreModel(sample::core({{"nickel-80", 0.5}, {"nickel-50", 0.5}}), sample::shop());
    const double weak = magnetics::blockFlux(core, core.blocks[0], 200);
    EXPECT_NEAR(weak, 0.75, 0.02);
    EXPECT_GT(magnetics::blockFlux(core, core.blocks[1], 200), 0.75);
    EXPECT_LT(magnetics::blockFlux(core, core.blocks[1], 5), 0.1 * magnetics::blockFlux(core, core.blocks[0], 5) + 0.1);
}

TEST(Voltage, AndFluxAreInverse) {
    const double volts = magnetics::voltageAtFlux(31.5, 1234, 0.7e-4, 0.42);
    EXPECT_NEAR(magnetics::fluxAtVoltage(volts, 31.5, 1234, 0.7e-4), 0.42, 1e-15);
}

}  // namespace curve_test
