// SPDX-License-Identifier: GPL-3.0-or-later
// The saturation knee of pure, mixed, gapped and biased stacks.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "sample_stack.h"

namespace knee_test {

using magnetics::CoreModel;

CoreModel stack(std::initializer_list<std::pair<const char*, double>> parts, double gap = 0) {
    design::Design design = sample::core(parts);
    design.core.gap = gap;
    return magnetics::coreModel(design, sample::shop());
}

double apparent(const CoreModel& core, double field) {
    return magnetics::meanFlux(core, field) / (magnetics::mu0 * field);
}

TEST(KneeFlux, OfACurveIsWhereApparentPermeabilityIsAFifthOfItsGreatest) {
    const CoreModel core = stack({{"silicon", 1}});
    double greatest = 0;
    for (double field = 1; field < 1000; field *= 1.001) greatest = std::max(greatest, apparent(core, field));
    double field = 100;
    while (apparent(core, field) > greatest / 5) field *= 1.00001;
    EXPECT_NEAR(magnetics::kneeFlux(core), magnetics::meanFlux(core, field), 1e-4);
    EXPECT_GT(greatest, 6500);  // of a curve whose greatest point-by-point B / H is near 7000
}

TEST(KneeFlux, OfAGappedCoreIsNinetyFivePerCentOfSaturation) {
    // The gap holds the apparent permeability up until the iron gives way altogether.
    EXPECT_NEAR(magnetics::kneeFlux(stack({{"nickel-50", 1}}, 1e-3)), 0.95 * 1.5, 1e-9);
}

TEST(KneeFlux, OfAMixedStackIsSetByTheAlloyThatSaturatesFirst) {
    const CoreModel mixed = stack({{"nickel-80", 0.5}, {"nickel-50", 0.5}}, 5e-6);
    const double knee = magnetics::kneeFlux(mixed);
    EXPECT_LT(knee, 0.75);
    EXPECT_LT(knee, magnetics::kneeFlux(stack({{"nickel-80", 1}}, 5e-6)));
    EXPECT_LT(knee, magnetics::kneeFlux(stack({{"nickel-50", 1}}, 5e-6)));
}

TEST(KneeFlux, SharesOfNoughtAndOneAreThePureStacks) {
    const double pure = magnetics::kneeFlux(stack({{"nickel-50", 1}}));
    EXPECT_EQ(magnetics::kneeFlux(stack({{"nickel-80", 0}, {"nickel-50", 1}})), pure);
    CoreModel unresolved = stack({{"nickel-80", 0.5}, {"nickel-50", 0.5}});
    unresolved.blocks[0].share = 0;
    unresolved.blocks[1].share = 1;
    EXPECT_NEAR(magnetics::kneeFlux(unresolved), pure, 1e-9);
}

TEST(KneeFlux, TwoBlocksOfOneAlloyAreOneBlock) {
    EXPECT_NEAR(magnetics::kneeFlux(stack({{"silicon", 0.5}, {"silicon", 0.5}})),
                magnetics::kneeFlux(stack({{"silicon", 1}})), 1e-9);
}

TEST(KneeFlux, DirectFieldTakesItsFluxAwayWithEitherSign) {
    const CoreModel core = stack({{"silicon", 1}}, 0.1e-3);
    const double all = magnetics::kneeFlux(core);
    const double half = magnetics::kneeFlux(core, 150);
    EXPECT_NEAR(all - half, magnetics::meanFlux(core, 150), 1e-12);
    EXPECT_EQ(magnetics::kneeFlux(core, -150), half);
    EXPECT_GT(half, 0.1);
}

TEST(KneeFlux, NothingIsLeftBeyondTheKnee) {
    EXPECT_EQ(magnetics::kneeFlux(stack({{"nickel-80", 1}}), 1e4), 0);
}

TEST(KneeFlux, AGapKeepsRoomUnderADirectField) {
    EXPECT_GT(magnetics::kneeFlux(stack({{"nickel-50", 1}}, 0.5e-3), 200),
              magnetics::kneeFlux(stack({{"nickel-50", 1}}), 200) + 0.2);
}

TEST(KneeFlux, IsInfiniteWhereNothingIsKnownToSaturate) {
    CoreModel core = stack({{"nickel-80", 1}});
    core.blocks[0].saturation = 0;
    EXPECT_TRUE(std::isinf(magnetics::kneeFlux(core)));
    EXPECT_TRUE(std::isinf(magnetics::kneeFlux(core, 100)));
    core.blocks.clear();
    EXPECT_TRUE(std::isinf(magnetics::kneeFlux(core)));
}

TEST(KneeFlux, ACurveAloneIsEnough) {
    CoreModel core = stack({{"silicon", 1}});
    const double known = magnetics::kneeFlux(core);
    core.blocks[0].saturation = 0;
    EXPECT_NEAR(magnetics::kneeFlux(core), known, 1e-9);
}

TEST(KneeFlux, OneBlockOfUnknownSaturationLeavesTheOthersLimit) {
    CoreModel core = stack({{"nickel-80", 0.5}, {"nickel-50", 0.5}}, 5e-6);
    const double known = magnetics::kneeFlux(core);
    core.blocks[1].saturation = 0;
    EXPECT_TRUE(std::isfinite(magnetics::kneeFlux(core)));
    EXPECT_GT(magnetics::kneeFlux(core), known - 0.01);
}

}  // namespace knee_test
