// SPDX-License-Identifier: GPL-3.0-or-later
// Windings added and taken out, with all that names them.
#include <gtest/gtest.h>

#include "design/check.h"
#include "design/edit.h"
#include "sample_design.h"

namespace design {
namespace edit_windings_test {

void expectSoundAgain(const Design& d) {
    for (const auto& fault : check(d, sampleShop(), "s")) ADD_FAILURE() << units::sentence(fault);
}

TEST(AddWinding, IsLikeTheLastOneWithEndsAndAPortOfItsOwn) {
    const Design d = sampleDesign();
    const DesignPtr more = addWinding(d, sampleShop());
    expectSoundAgain(*more);
    const Winding& fresh = more->windings.back();
    EXPECT_EQ(fresh.name, "S2");
    EXPECT_EQ(fresh.wire, d.windings.back().wire);
    EXPECT_EQ(fresh.start, "5");
    EXPECT_EQ(fresh.finish, "6");
    EXPECT_EQ(more->terminals.back().pin, 0) << "the bobbin has no pins";
    EXPECT_EQ(conductorTurns(*more, fresh), 300);
    ASSERT_EQ(sectionsOf(*more, fresh).size(), 1U);
    EXPECT_EQ(more->ports.back().name, "S2");
    const auto& order = more->coil[0].order;
    EXPECT_EQ(order.back().section()->winding, "S2");
    EXPECT_EQ(order[order.size() - 2].barrier()->ply.thickness.value, 8e-5);
    EXPECT_EQ(more->hookUps, d.hookUps);
}

TEST(AddWinding, TakesTheLowestPinsThatAreFree) {
    auto shop = sampleShop();
    for (const int number : {6, 4, 2, 9}) {
        shop.bobbins["bobbin"].pins.emplace_back();
        shop.bobbins["bobbin"].pins.back().number = number;
    }
    Design d = sampleDesign();
    d.terminals[0].pin = 6;  // called "1"; pins 2 and 4 are free, but terminals are called so
    const DesignPtr more = addWinding(d, shop);
    EXPECT_EQ(more->windings.back().start, "9");
    EXPECT_EQ(more->terminals[4].pin, 9);
    EXPECT_EQ(more->terminals[5].pin, 0) << "no pin is left";
    EXPECT_EQ(more->windings.back().finish, "5") << "the next number that nothing is called";
}

TEST(AddWinding, GoesUnderTheBarrierThatClosesTheCoil) {
    Design d = sampleDesign();
    d.coil[0].order.push_back(barrierItem(3e-5));
    const auto more = addWinding(d, sampleShop());
    const auto& order = more->coil[0].order;
    ASSERT_NE(order.back().barrier(), nullptr);
    EXPECT_EQ(order.back().barrier()->ply.thickness.value, 3e-5);
    EXPECT_EQ(order[order.size() - 2].section()->winding, "S2");
    EXPECT_EQ(*removeWinding(*more, "S2"), d);
}

TEST(RemoveWinding, UndoesAnAddition) {
    const Design d = sampleDesign();
    EXPECT_EQ(*removeWinding(*addWinding(d, sampleShop()), "S2"), d);
}

TEST(RemoveWinding, TakesAllThatNamesItAlong) {
    Design d = *addWinding(sampleDesign(), sampleShop());
    d.hookUps[0].ports.emplace_back();
    d.hookUps[0].ports.back().port = "S2";
    d.hookUps[0].earths.push_back("6");
    d.conditions.directCurrents.emplace_back();
    d.conditions.directCurrents[0].winding = "S2";
    for (const char* figure : {"ratio.P.S2", "dcr.S2", "impedance_1kHz.S2", "dcr.S", "low_3dB"}) {
        d.brief.promises.emplace_back();
        d.brief.promises.back().figure = figure;
        d.brief.promises.back().atLeast = 1;
    }
    const DesignPtr less = removeWinding(d, "S2");
    expectSoundAgain(*less);
    EXPECT_EQ(less->hookUps, sampleDesign().hookUps);
    EXPECT_EQ(less->terminals, sampleDesign().terminals);
    EXPECT_TRUE(less->conditions.directCurrents.empty());
    ASSERT_EQ(less->brief.promises.size(), 2U);
    EXPECT_EQ(less->brief.promises[0].figure, "dcr.S");
}

TEST(RemoveWinding, LeavesTheOnlyOneAndWhatItDoesNotKnow) {
    const Design d = sampleDesign();
    EXPECT_EQ(*removeWinding(d, "T"), d);
    const DesignPtr one = removeWinding(d, "S");
    EXPECT_EQ(one->windings.size(), 1U);
    EXPECT_EQ(*removeWinding(*one, "P"), *one);
}

}  // namespace edit_windings_test
}  // namespace design
