// SPDX-License-Identifier: GPL-3.0-or-later
// The alloys that come with the program, taken through the same functions as in a design.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "shipped_alloys.h"

namespace catalog_alloys_test {

using sample::pureStack;
using sample::shipped;

double apparent(const magnetics::StackBlock& block, double field) {
    return magnetics::fluxAtField(block, field) / (magnetics::mu0 * field);
}

TEST(ShippedAlloys, CurvesStartWithTheInitialPermeability) {
    for (const auto& [key, alloy] : shipped().alloys) {
        ASSERT_GE(alloy.curve.size(), 2U) << key;
        const magnetics::StackBlock block = pureStack(key).blocks.at(0);
        EXPECT_NEAR(apparent(block, alloy.curve[1].field / 100) / alloy.initialPermeability, 1, 0.01) << key;
        EXPECT_NEAR(apparent(block, alloy.curve[1].field) / alloy.initialPermeability, 1, 0.05) << key;
    }
}

TEST(ShippedAlloys, CurvesReachTheMaximumPermeability) {
    for (const auto& [key, alloy] : shipped().alloys) {
        const magnetics::StackBlock block = pureStack(key).blocks.at(0);
        double greatest = 0;
        for (double field = 1e-3; field < 1e4; field *= 1.01) greatest = std::max(greatest, apparent(block, field));
        EXPECT_NEAR(greatest / alloy.maximumPermeability, 1, 0.05) << key;
    }
}

TEST(ShippedAlloys, PolarisationStaysBelowTheSaturation) {
    for (const auto& [key, alloy] : shipped().alloys) {
        const double field = alloy.curve.back().field;
        const double polarisation = magnetics::fluxAtField(pureStack(key).blocks.at(0), field) - magnetics::mu0 * field;
        EXPECT_LE(polarisation, alloy.saturation * 1.001) << key;
        EXPECT_GE(polarisation, alloy.saturation * 0.95) << key;
    }
}

TEST(ShippedAlloys, KneeLiesBelowTheSaturation) {
    for (const auto& [key, alloy] : shipped().alloys) {
        const double knee = magnetics::kneeFlux(pureStack(key));
        EXPECT_GT(knee, 0.6 * alloy.saturation) << key;
        EXPECT_LE(knee, 0.95 * alloy.saturation * (1 + 1e-9)) << key;
    }
}

}  // namespace catalog_alloys_test
