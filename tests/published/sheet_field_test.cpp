// SPDX-License-Identifier: GPL-3.0-or-later
// Flux that is driven out of a saturating sheet.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/eddy_balance.h"
#include "magnetics/permeability.h"

namespace sheet_field_test {

constexpr double pi = std::numbers::pi;
constexpr double thickness = 1e-3, resistivity = 0.5e-6, saturation = 1.5, frequency = 5000;

magnetics::CoreLoop sheetOf(double permeability) {
    magnetics::CoreModel core;
    core.area = 1e-4;
    core.pathLength = 0.1;
    magnetics::StackBlock block;
    block.initialPermeability = permeability;
    block.saturation = saturation;
    block.thickness = thickness;
    block.resistivity = resistivity;
    core.blocks = {block};
    return magnetics::CoreLoop(core);
}

/// Loss per surface over that of a sheet which is saturated one way or the other, with nothing between, where its
/// saturation reaches 0.7 of the way to the middle.
double lossOverLimit(double permeability) {
    const double depth = 0.7 * thickness / 2, w = 2 * pi * frequency;
    const double peak = depth * depth * w * saturation / (2 * resistivity);
    const double limit = 8 * peak * peak * resistivity / (3 * pi * depth);
    const magnetics::CoreLoop sheet = sheetOf(permeability);
    analysis::Surroundings around;
    around.load.assign(40, 0);
    around.drive = peak / 2;
    const auto cycle = analysis::EddyBalance(sheet, frequency, 512, 16).steadyCycle(sheet.atRest(), around);
    EXPECT_TRUE(cycle.settled) << permeability;
    return magnetics::loopArea(cycle.fields, cycle.fluxes) * frequency * thickness / 2 / limit;
}

/// Limiting theory: at a peak field H the front reaches delta = sqrt(2 rho H / (w B)), loss per surface is  8 rho H^2 /
/// (3 pi delta)  (W. MacLean, J. Appl. Phys. 25, 1954, and P. D. Agarwal, Trans. AIEE 78, 1959, both from memory;
/// derived anew: behind the front B is even and H falls straight to it, H / x = (2 B / rho) dx/dt).
TEST(PublishedSaturatedSheet, LossNearsTheLimitAsTheKneeGetsSharp) {
    const double blunt = lossOverLimit(1e4), sharp = lossOverLimit(3e4);
    EXPECT_GT(blunt, 0.94);
    EXPECT_GT(sharp, 0.97);
    EXPECT_GT(sharp, blunt);
    EXPECT_LT(sharp, 1);
}

/// Far below the knee mean flux over surface field is tanh(theta) / theta (R. M. Bozorth 1951, J. Lammeraner and M.
/// Stafl 1966, both from memory).
TEST(PublishedSaturatedSheet, AtLowLevelItIsTheLinearSheet) {
    constexpr double permeability = 1e4;
    const magnetics::CoreLoop sheet = sheetOf(permeability);
    for (const double f : {5.0, 50.0, 500.0, 5000.0}) {
        analysis::Surroundings around;
        around.load.assign(16, 0);
        around.drive = 1e-4;
        const auto cycle = analysis::EddyBalance(sheet, f).steadyCycle(sheet.atRest(), around);
        ASSERT_TRUE(cycle.settled) << f;
        const auto exact = magnetics::mu0 * magnetics::sheetPermeability(f, permeability, resistivity, thickness);
        EXPECT_LT(std::abs(cycle.flux[1] / cycle.field[1] / exact - 1.0), 1e-4) << f;
    }
}

/// Classical loss pi^2 B^2 f^2 d^2 / (6 rho) at the first order of frequency (R. M. Bozorth, from memory).
TEST(PublishedSaturatedSheet, AtLowFrequencyTheLossIsTheClassicalOne) {
    const magnetics::CoreLoop sheet = sheetOf(1000);
    constexpr double f = 5;
    analysis::Surroundings around;
    around.load.assign(16, 0);
    around.drive = 1;
    const auto cycle = analysis::EddyBalance(sheet, f).steadyCycle(sheet.atRest(), around);
    const double classical = magnetics::classicalEddyLoss(2 * std::abs(cycle.flux[1]), f, thickness, resistivity);
    EXPECT_NEAR(magnetics::loopArea(cycle.fields, cycle.fluxes) * f / classical, 1, 2e-3);
}

}  // namespace sheet_field_test
