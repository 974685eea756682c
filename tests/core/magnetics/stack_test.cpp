// SPDX-License-Identifier: GPL-3.0-or-later
// The stack resolved from a design, and its inductance per turn.
#include "magnetics/stack.h"

#include <gtest/gtest.h>

#include <cmath>

#include "magnetics/permeability.h"
#include "sample_stack.h"

namespace stack_test {

using magnetics::CoreModel;

CoreModel modelOf(const design::Design& design) {
    return magnetics::coreModel(design, sample::shop());
}

TEST(CoreModel, TakesSectionPathAndAlloyFromTheCatalog) {
    const CoreModel core = modelOf(sample::core({{"nickel-80", 0.4}, {"nickel-50", 0.6}}));
    EXPECT_TRUE(core.valid);
    EXPECT_EQ(core.why, "");
    EXPECT_NEAR(core.area, 230.4e-6, 1e-15);
    EXPECT_NEAR(core.pathLength, 0.096, 1e-15);
    EXPECT_EQ(core.gap, 5e-6);
    EXPECT_EQ(core.fringing, 1);
    ASSERT_EQ(core.blocks.size(), 2U);
    EXPECT_EQ(core.blocks[1].alloy, "50 % nickel");
    EXPECT_EQ(core.blocks[1].share, 0.6);
    EXPECT_EQ(core.blocks[1].initialPermeability, 6000);
    EXPECT_EQ(core.blocks[1].saturation, 1.5);
    EXPECT_EQ(core.blocks[1].resistivity, 48e-8);
    EXPECT_EQ(core.blocks[1].thickness, 0.35e-3);
}

TEST(CoreModel, TwoLegsHaveOneLegsSectionAndTheWholePath) {
    design::Design design = sample::core({{"nickel-50", 1}});
    design.core.kind = design::CoreKind::TwoLeg;
    design.core.sheet = "ui30";
    const CoreModel core = modelOf(design);
    EXPECT_TRUE(core.valid);
    EXPECT_NEAR(core.area, 10e-3 * 16e-3 * 0.9, 1e-15);
    EXPECT_NEAR(core.pathLength, 2 * 40e-3 + 2 * 20e-3, 1e-15);  // mid-line of a 30 x 10 mm window and 10 mm legs
}

TEST(CoreModel, TheDesignsOwnCopyRules) {
    design::Design design = sample::core({{"nickel-80", 1}});
    design.parts.alloys["nickel-80"] = sample::shop().alloys["nickel-50"];
    EXPECT_EQ(modelOf(design).blocks.at(0).initialPermeability, 6000);
}

TEST(CoreModel, PermeabilityFactorScalesInductanceAndCurve) {
    design::Design design = sample::core({{"silicon", 1}});
    const magnetics::StackBlock full = modelOf(design).blocks.at(0);
    design.core.stack[0].permeabilityFactor = 0.5;
    const magnetics::StackBlock half = modelOf(design).blocks.at(0);
    EXPECT_EQ(half.initialPermeability, 250);
    EXPECT_EQ(half.rayleigh, full.rayleigh / 4);  // B = mu0 (mu_i H + nu H^2) at half the field
    ASSERT_EQ(half.curve.size(), full.curve.size());
    EXPECT_EQ(half.curve[3].field, 2 * full.curve[3].field);
    EXPECT_EQ(half.curve[3].flux, full.curve[3].flux);
}

TEST(CoreModel, AlternatingSheetsOfDifferentAlloysAreMarked) {
    design::Design design = sample::core({{"nickel-80", 0.5}, {"nickel-50", 0.5}});
    design.core.pattern = design::StackPattern::Alternating;
    const CoreModel core = modelOf(design);
    EXPECT_FALSE(core.valid);
    EXPECT_EQ(
        core.why,
        "alternating sheets are computed as parallel paths, without the flux that neighbours exchange at the joints");
    design.core.stack[1].alloy = "nickel-80";
    EXPECT_TRUE(modelOf(design).valid) << "alternating with itself is one stack";
}

TEST(CoreModel, MissingPartsAreNamed) {
    design::Design design = sample::core({{"unobtainium", 1}});
    EXPECT_EQ(modelOf(design).why, "the alloy unobtainium is not in the catalog");
    EXPECT_FALSE(modelOf(design).valid);
    EXPECT_EQ(magnetics::turnInductance(modelOf(design), 50), std::complex<double>());
    design.core.sheet = "no-sheet";
    EXPECT_EQ(modelOf(design).why,
              "the alloy unobtainium is not in the catalog; the sheet no-sheet is not in the catalog");
}

TEST(CoreModel, NarrowYokesAreNoted) {
    design::Design design = sample::core({{"nickel-50", 1}});
    catalog::Catalog shop = sample::shop();
    shop.sheets["ei48"].yoke = 6e-3;
    const CoreModel core = magnetics::coreModel(design, shop);
    EXPECT_EQ(core.why,
              "flux is taken as uniform, but outer legs or yokes are narrower than the coil's leg and saturate first");
    EXPECT_TRUE(core.valid);
}

TEST(CoreModel, OnlyADeliberateGapFringes) {
    design::Design design = sample::core({{"nickel-50", 1}});
    design.core.gap = 0.5e-3;
    EXPECT_EQ(modelOf(design).gap, 0.5e-3) << "an interleaved joint's gap is an effective one";
    design.core.joint = design::Joint::Butt;
    const CoreModel butt = modelOf(design);
    EXPECT_GT(butt.fringing, 1.1);
    EXPECT_EQ(butt.fringing, magnetics::fringingFactor(0.5e-3, butt.area, 24e-3));
    EXPECT_NEAR(butt.gap * butt.fringing, 0.5e-3, 1e-18);
    design.core.gap = 99e-6;  // two joints of less than 50 um
    EXPECT_EQ(modelOf(design).gap, 99e-6);
}

TEST(FringingFactor, NeverShrinksTheSection) {
    EXPECT_EQ(magnetics::fringingFactor(10e-3, 1e-4, 2e-3), 1);
}

TEST(TurnInductance, SharesOfNoughtAndOneAreThePureStacks) {
    const CoreModel pure = modelOf(sample::core({{"nickel-50", 1}}));
    const CoreModel mixed = modelOf(sample::core({{"nickel-80", 0}, {"nickel-50", 1}}));
    EXPECT_EQ(mixed, pure);
}

TEST(TurnInductance, TwoBlocksOfOneAlloyAreOneBlock) {
    const CoreModel one = modelOf(sample::core({{"nickel-80", 1}}));
    const CoreModel two = modelOf(sample::core({{"nickel-80", 0.3}, {"nickel-80", 0.7}}));
    for (const double frequency : {0.0, 20.0, 1000.0, 1e5})
        EXPECT_NEAR(
            std::abs(magnetics::turnInductance(two, frequency) / magnetics::turnInductance(one, frequency) - 1.0), 0,
            1e-14);
}

TEST(TurnInductance, MixedStackIsTheShareWeightedSum) {
    const CoreModel soft = modelOf(sample::core({{"nickel-80", 1}}));
    const CoreModel hard = modelOf(sample::core({{"nickel-50", 1}}));
    const CoreModel mixed = modelOf(sample::core({{"nickel-80", 0.25}, {"nickel-50", 0.75}}));
    const std::complex<double> sum =
        0.25 * magnetics::turnInductance(soft, 300) + 0.75 * magnetics::turnInductance(hard, 300);
    EXPECT_NEAR(std::abs(magnetics::turnInductance(mixed, 300) / sum - 1.0), 0, 1e-14);
}

TEST(TurnInductance, IsRealAtZeroFrequencyAndReachedSmoothly) {
    const CoreModel core = modelOf(sample::core({{"nickel-80", 0.5}, {"nickel-50", 0.5}}));
    const std::complex<double> still = magnetics::turnInductance(core, 0);
    EXPECT_EQ(still.imag(), 0);
    EXPECT_NEAR(std::abs(magnetics::turnInductance(core, 1e-6) / still - 1.0), 0, 1e-7);
}

TEST(TurnInductance, AWideGapHidesTheIron) {
    CoreModel core = modelOf(sample::core({{"nickel-80", 1}}));
    core.gap = 2e-3;
    const double air = magnetics::mu0 * core.area / core.gap;
    EXPECT_NEAR(magnetics::turnInductance(core, 20).real() / air, 1, 2e-3);
}

TEST(TurnInductance, TakesPowerAtEveryFrequency) {
    const CoreModel core = modelOf(sample::core({{"nickel-80", 0.5}, {"nickel-50", 0.5}}));
    for (double frequency = 0.1; frequency < 1e7; frequency *= 2)
        EXPECT_LT(magnetics::turnInductance(core, frequency).imag(), 0) << frequency;
}

}  // namespace stack_test
