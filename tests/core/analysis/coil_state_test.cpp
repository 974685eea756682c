// SPDX-License-Identifier: GPL-3.0-or-later
// Ampere-turns and voltages layer by layer, against what turns alone say.
#include "analysis/coil_state.h"

#include <gtest/gtest.h>

#include "design/edit.h"
#include "small_transformer.h"

namespace coil_state_test {

const catalog::Catalog& shop() {
    static const catalog::Catalog one = small::shop();
    return one;
}

analysis::CoilState stateOf(const design::Design& d) {
    return analysis::coilState(d, *analysis::answer(d, shop()));
}

/// P.a has one layer of 188 turns, S.a two: an ampere in P is balanced by half an ampere in each turn of S.
TEST(CoilState, AmpereTurnsAreBalancedLayerByLayer) {
    const auto state = stateOf(small::transformer());
    ASSERT_TRUE(state.known()) << state.why;
    ASSERT_EQ(state.layers.size(), 3U);
    EXPECT_EQ(state.driven, "input");
    EXPECT_EQ(state.observed, "output");
    EXPECT_NEAR(state.layers[0].ampereTurns, 188, 0.5);
    EXPECT_NEAR(state.layers[1].ampereTurns, -94, 0.5);
    EXPECT_NEAR(state.layers[2].ampereTurns, -94, 0.5);
    double sum = 0;
    for (const auto& layer : state.layers) sum += layer.ampereTurns;
    EXPECT_LT(std::abs(sum), 0.01 * 188);  // the core's share
}

/// A volt falls over P's 188 turns, two over S's: the ratio of turns, less what windings and load cost (under 3 %).
TEST(CoilState, VoltagesFollowTheTurnsAlongTheConductor) {
    const auto state = stateOf(small::transformer());
    EXPECT_NEAR(state.layers[0].startVolts, 1, 1e-9);
    EXPECT_EQ(state.layers[0].finishVolts, 0);
    EXPECT_NEAR(state.layers[1].startVolts, 2, 0.06);
    EXPECT_NEAR(state.layers[1].finishVolts, 1, 0.03);
    EXPECT_EQ(state.layers[1].finishVolts, state.layers[2].startVolts);
    EXPECT_EQ(state.layers[2].finishVolts, 0);
}

TEST(CoilState, TheDrivenWindingIsPositiveWhicheverWayItIsWound) {
    auto d = small::transformer();
    d.coil[0].order[0].section()->reversed = true;
    EXPECT_GT(stateOf(d).layers[0].ampereTurns, 187);
    EXPECT_LT(stateOf(d).layers[1].ampereTurns, -93);
    const auto swapped = design::swapEnds(small::transformer(), "P");
    EXPECT_GT(stateOf(*swapped).layers[0].ampereTurns, 187);
}

TEST(CoilState, AShieldStandsAtItsOwnPotential) {
    auto d = small::transformer();
    design::Shield shield;
    shield.name = "SH";
    d.coil[0].order.insert(d.coil[0].order.begin() + 2, {design::Item{shield}, design::Item{small::barrier(1e-4)}});
    d.hookUps[0].earths.push_back("SH");
    ASSERT_EQ(stateOf(d).foilVolts.size(), 1U);
    EXPECT_EQ(stateOf(d).foilVolts[0], 0);
    // Left alone it floats between P (1 V to 0) and the layer of S beside it (2 V to 1).
    d.hookUps[0].earths.pop_back();
    const double floating = stateOf(d).foilVolts[0];
    EXPECT_GT(floating, 0.5);
    EXPECT_LT(floating, 1.5);
}

TEST(CoilState, WithoutADrivenPortItSaysWhy) {
    auto d = small::transformer();
    d.hookUps[0].ports[0].role = design::Role::Load;
    EXPECT_EQ(stateOf(d).why, "hook-up normal drives no port or observes none");
}

}  // namespace coil_state_test
