// SPDX-License-Identifier: GPL-3.0-or-later
// Where layers, paper and foils lie, on a coil of round numbers.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>

#include "coil/coil_build.h"
#include "coil/mean_turn.h"
#include "coil/winding_steps.h"
#include "coil/wire_resistance.h"
#include "small_transformer.h"

namespace lay_out_test {

using coil::CoilBuild;
using small::overall;

constexpr double nanometre = 1e-9;

CoilBuild laid(const design::Design& d) {
    return coil::layOut(d, small::shop());
}

double turnsOf(const CoilBuild& build, const std::string& winding) {
    double sum = 0;
    for (const auto& l : build.layers)
        if (l.winding == winding) sum += l.turns;
    return sum;
}

std::string problemsOf(const CoilBuild& build) {
    std::string all;
    for (const auto& f : build.fill)
        for (const auto& p : f.problems) all += (all.empty() ? "" : "; ") + p;
    return all;
}

TEST(TurnsPerLayer, WholeWiresSideBySide) {
    EXPECT_EQ(coil::turnsThatFit(22e-3, 0.117e-3), 188);
    EXPECT_EQ(coil::turnsThatFit(22e-3, 22e-3 / 100), 100);  // exactly a hundred wires
    EXPECT_EQ(coil::turnsThatFit(1e-3, 2e-3), 1);
    EXPECT_EQ(coil::turnsThatFit(0, 1e-4), 1);
}

TEST(LayOut, ThreeThousandTurnsMakeSixteenLayers) {
    const auto build = laid(small::alone(small::sectionOf("P", "a", 3000)));
    ASSERT_EQ(build.layers.size(), 16U);
    for (std::size_t k = 0; k < 15; ++k) EXPECT_EQ(build.layers[k].turns, 188);
    EXPECT_EQ(build.layers[15].turns, 3000 - 15 * 188);
    EXPECT_EQ(turnsOf(build, "P"), 3000);
    EXPECT_EQ(problemsOf(build), "");
}

TEST(LayOut, LayersStandOnEachOtherFromTheBobbinOutward) {
    const auto build = laid(small::transformer());
    ASSERT_EQ(build.layers.size(), 3U);
    EXPECT_NEAR(build.layers[0].box.x0, 1e-3, nanometre);
    EXPECT_NEAR(build.layers[0].box.width(), overall, nanometre);
    EXPECT_NEAR(build.layers[1].box.x0, 1e-3 + overall + 1e-4, nanometre);
    EXPECT_NEAR(build.layers[2].box.x0, build.layers[1].box.x1, nanometre);
    EXPECT_NEAR(build.fill[0].build, 3 * overall + 1e-4, nanometre);
    EXPECT_NEAR(build.fill[0].heightShare, (3 * overall + 1e-4) / small::roomHeight, 1e-9);
    EXPECT_NEAR(build.fill[0].over, 3 * overall + 1e-4 - small::roomHeight, nanometre);
    for (const auto& l : build.layers) {
        EXPECT_NEAR(l.box.y0, 1e-3, nanometre);
        EXPECT_NEAR(l.box.y1, 23e-3, nanometre);
    }
}

TEST(LayOut, LayersGoToAndFroOrBeginAtTheSameEnd) {
    auto section = small::sectionOf("P", "a", 3 * 188);
    auto build = laid(small::alone(section));
    EXPECT_EQ(build.layers[0].begins, design::End::Low);
    EXPECT_EQ(build.layers[1].begins, design::End::High);
    EXPECT_EQ(build.layers[2].begins, design::End::Low);
    section.traverse = design::Traverse::SameSide;
    section.starts = design::End::High;
    build = laid(small::alone(section));
    for (const auto& l : build.layers) EXPECT_EQ(l.begins, design::End::High);
}

TEST(LayOut, PartFilledLastLayerKeepsItsPitchOrSpreads) {
    auto section = small::sectionOf("P", "a", 188 + 94);
    auto build = laid(small::alone(section));
    const double pitch = small::roomWidth / 188;
    ASSERT_EQ(build.layers.size(), 2U);  // the second begins at the high end
    EXPECT_NEAR(build.layers[1].pitch, pitch, nanometre);
    EXPECT_NEAR(build.layers[1].box.y0, 23e-3 - 94 * pitch, nanometre);
    EXPECT_NEAR(build.layers[1].box.y1, 23e-3, nanometre);
    section.lastLayer = design::LastLayer::Spread;
    build = laid(small::alone(section));
    EXPECT_NEAR(build.layers[1].pitch, 2 * pitch, nanometre);
    EXPECT_NEAR(build.layers[1].box.height(), small::roomWidth, nanometre);
}

TEST(LayOut, NestedLayersSinkIntoTheGrooves) {
    auto section = small::sectionOf("P", "a", 5 * 188);
    section.lay = design::Lay::Nested;
    const auto build = laid(small::alone(section));
    const double step = overall * std::sqrt(3.0) / 2;
    ASSERT_EQ(build.layers.size(), 5U);
    EXPECT_FALSE(build.layers[0].nested);
    for (std::size_t k = 1; k < 5; ++k) {
        EXPECT_TRUE(build.layers[k].nested);
        EXPECT_NEAR(build.layers[k].box.x0 - build.layers[k - 1].box.x0, step, nanometre);
    }
    EXPECT_NEAR(build.fill[0].build, overall + 4 * step, nanometre);
    section.interlayer = design::Ply{"film", 5e-5};  // paper between: nothing to nest in
    EXPECT_NEAR(laid(small::alone(section)).fill[0].build, 5 * overall + 4 * 5e-5, nanometre);
}

TEST(LayOut, RandomSectionIsABodyOfTheWiresAreaInStrokes) {
    auto section = small::sectionOf("P", "a", 3000);
    section.lay = design::Lay::Random;
    const auto build = laid(small::alone(section));
    // 3000 turns at the mean pitch of 0.73 wire in the space: 181 a stroke, 17 strokes.
    ASSERT_EQ(build.layers.size(), 17U);
    double turns = 0;
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        EXPECT_TRUE(layer.random);
        turns += layer.turns;
        EXPECT_EQ(layer.begins, k % 2 == 0 ? design::End::Low : design::End::High);
        EXPECT_NEAR(layer.box.height(), small::roomWidth, nanometre);  // every stroke spreads over the room
        if (k > 0) {
            EXPECT_NEAR(layer.box.x0, build.layers[k - 1].box.x1, nanometre);
        }
    }
    EXPECT_EQ(turns, 3000);
    const double body = build.layers.back().box.x1 - build.layers.front().box.x0;
    const double wires = 3000 * std::numbers::pi / 4 * overall * overall;
    EXPECT_NEAR(wires / (body * small::roomWidth), 0.73, 1e-9);
    section.layerFactor = 1.1;
    const auto loose = laid(small::alone(section));
    EXPECT_NEAR(loose.layers.back().box.x1 - loose.layers.front().box.x0, 1.1 * body, nanometre);
}

TEST(LayOut, RandomSectionsOfOneHandShareTheirStrokes) {
    auto p = small::sectionOf("P", "a", 1000), s = small::sectionOf("S", "a", 1000);
    p.lay = s.lay = design::Lay::Random;
    p.hand = s.hand = "1";
    auto d = small::transformer();
    d.coil[0].order = {{p}, {s}};
    const auto build = laid(d);
    ASSERT_EQ(build.layers.size() % 2, 0U);
    for (std::size_t k = 0; k < build.layers.size(); k += 2) EXPECT_EQ(build.layers[k].box, build.layers[k + 1].box);
    const double body = build.layers.back().box.x1 - build.layers.front().box.x0;
    EXPECT_NEAR(2000 * std::numbers::pi / 4 * overall * overall / (body * small::roomWidth), 0.73, 1e-9);
}

TEST(LayOut, TapsSplitTheirLayer) {
    auto d = small::alone(small::sectionOf("P", "a", 300));
    d.windings[0].taps = {{100, "5", {}}, {188, "6", {}}};
    const auto build = laid(d);
    ASSERT_EQ(build.layers.size(), 3U);
    EXPECT_EQ(build.layers[0].turns, 100);
    EXPECT_EQ(build.layers[0].tapAfter, "5");
    EXPECT_EQ(build.layers[1].turns, 88);
    EXPECT_EQ(build.layers[1].tapAfter, "6");  // at the layer's last turn: no further cut
    EXPECT_EQ(build.layers[1].number, 1);
    EXPECT_NEAR(build.layers[1].box.y0, build.layers[0].box.y1, nanometre);
    EXPECT_EQ(build.layers[2].turns, 112);
    EXPECT_EQ(build.layers[2].tapAfter, "");
}

TEST(LayOut, TapsAreCountedOverAllSections) {
    auto d = small::transformer();
    d.coil[0].order.push_back({small::sectionOf("P", "b", 188)});
    d.windings[0].taps = {{188 + 50, "5", {}}};
    const auto build = laid(d);
    ASSERT_EQ(build.layers.size(), 5U);
    EXPECT_EQ(build.layers[3].section, "b");
    EXPECT_EQ(build.layers[3].turns, 50);
    EXPECT_EQ(build.layers[3].tapAfter, "5");
}

TEST(LayOut, HalfTurnsAreKept) {
    const auto build = laid(small::alone(small::sectionOf("P", "a", 188.5)));
    ASSERT_EQ(build.layers.size(), 2U);
    EXPECT_EQ(build.layers[1].turns, 0.5);
    EXPECT_EQ(turnsOf(build, "P"), 188.5);
}

TEST(LayOut, MarginsNarrowALayer) {
    auto section = small::sectionOf("P", "a", 100);
    section.marginLow = 1e-3;
    section.marginHigh = 2e-3;
    section.lastLayer = design::LastLayer::Spread;
    const auto build = laid(small::alone(section));
    EXPECT_NEAR(build.layers[0].box.y0, 2e-3, nanometre);
    EXPECT_NEAR(build.layers[0].box.y1, 21e-3, nanometre);
    section.turns = 400;
    EXPECT_EQ(laid(small::alone(section)).layers[0].turns, std::floor(19e-3 / overall));
}

TEST(LayOut, StandsOnBothLegsAlike) {
    auto d = small::transformer();
    d.core.kind = design::CoreKind::TwoLeg;
    d.coil = {design::Place{}, design::Place{}};
    d.coil[0].order = {{small::sectionOf("P", "a", 376)}};
    d.coil[1].leg = 2;
    d.coil[1].order = {{small::sectionOf("S", "a", 376)}};
    const auto build = laid(d);
    EXPECT_EQ(build.legs, 2);
    ASSERT_EQ(build.layers.size(), 4U);
    EXPECT_EQ(build.layers[0].leg, 1);
    EXPECT_EQ(build.layers[2].leg, 2);
    EXPECT_EQ(build.layers[0].box, build.layers[2].box);  // from its own leg outward
    EXPECT_DOUBLE_EQ(build.layers[1].turnLength, build.layers[3].turnLength);
    EXPECT_NEAR(build.fill[0].room.x1, 4.5e-3, nanometre);  // half the shared window
    EXPECT_NEAR(build.fill[1].room.x1, 4.5e-3, nanometre);
}

TEST(LayOut, WhatDoesNotFitIsLaidOutAndSaid) {
    const auto build = laid(small::alone(small::sectionOf("P", "a", 188 * 80)));
    ASSERT_EQ(build.layers.size(), 80U);
    EXPECT_NEAR(build.fill[0].over, 80 * overall - small::roomHeight, nanometre);
    EXPECT_EQ(problemsOf(build), "the coil is 1.36 mm higher than its room");
    EXPECT_GT(build.layers.back().box.x1, 9e-3);
}

TEST(LayOut, TooManyTurnsALayerAndNoRoomAreSaid) {
    auto section = small::sectionOf("P", "a", 400);
    section.turnsPerLayer = 200;
    EXPECT_EQ(problemsOf(laid(small::alone(section))), "P.a has 200 turns a layer where 188 fit");
    section.turnsPerLayer = 0;
    section.marginLow = 12e-3;
    section.marginHigh = 12e-3;
    EXPECT_NE(problemsOf(laid(small::alone(section))).find("P.a has no width left between its margins"),
              std::string::npos);
    auto d = small::alone(small::sectionOf("P", "a", 1));
    d.windings[0].wire = "thick";
    d.windings[0].strands = 30;
    EXPECT_EQ(problemsOf(laid(d)), "P.a has no room for one turn");
}

TEST(LayOut, FoilMakesOneTurnALayer) {
    auto d = small::alone(small::sectionOf("P", "a", 6));
    d.windings[0].wire = {};
    d.windings[0].foil.emplace().thickness = 5e-5;
    d.coil[0].order[0].section()->interlayer = design::Ply{"film", 2e-5};
    auto build = laid(d);
    ASSERT_EQ(build.layers.size(), 6U);
    EXPECT_NEAR(build.fill[0].build, 6 * 5e-5 + 5 * 2e-5, nanometre);
    EXPECT_NEAR(build.layers[0].box.height(), small::roomWidth, nanometre);
    EXPECT_NEAR(build.layers[0].resistance20,
                coil::copperResistivity20 * build.layers[0].turnLength / (5e-5 * small::roomWidth), 1e-12);
    d.windings[0].foil->width = 10e-3;
    build = laid(d);
    EXPECT_NEAR(build.layers[0].box.y0, 7e-3, nanometre);  // in the middle
    EXPECT_NEAR(build.layers[0].box.y1, 17e-3, nanometre);
}

TEST(LayOut, StrandsLieSideBySideAndShareTheCurrent) {
    auto d = small::alone(small::sectionOf("P", "a", 62));
    const double single = laid(d).layers[0].resistance20;
    d.windings[0].strands = 3;
    const auto build = laid(d);
    ASSERT_EQ(build.layers.size(), 1U);  // 62 groups of three in 22 mm
    EXPECT_EQ(build.layers[0].turns, 62);
    EXPECT_NEAR(build.layers[0].resistance20, single / 3, 1e-9 * single);
    d.coil[0].order[0].section()->turns = 63;
    EXPECT_EQ(laid(d).layers.size(), 2U);
}

TEST(LayOut, SectionsOfOneHandShareTheirLayers) {
    auto d = small::transformer();
    auto p = small::sectionOf("P", "a", 188), s = small::sectionOf("S", "a", 188);
    p.hand = s.hand = "bifilar";
    d.coil[0].order = {{p}, {s}};
    const auto build = laid(d);
    ASSERT_EQ(build.layers.size(), 4U);  // 94 turns of each in a layer
    for (const auto& l : build.layers) EXPECT_EQ(l.turns, 94);
    EXPECT_EQ(build.layers[0].winding, "P");
    EXPECT_EQ(build.layers[1].winding, "S");
    EXPECT_EQ(build.layers[0].box, build.layers[1].box);
    EXPECT_NEAR(build.fill[0].build, 2 * overall, nanometre);
}

TEST(LayOut, ShieldAndPaperTakeTheirRoom) {
    auto d = small::transformer();
    design::Shield shield;
    shield.name = "SH";
    shield.thickness = 30e-6;
    shield.marginLow = 1e-3;
    d.coil[0].order.insert(d.coil[0].order.begin() + 2, {{shield}, {small::barrier(8e-5, "paper")}});
    const auto build = laid(d);
    ASSERT_EQ(build.foils.size(), 1U);
    EXPECT_NEAR(build.foils[0].box.x0, 1e-3 + overall + 1e-4, nanometre);
    EXPECT_NEAR(build.foils[0].box.width(), 30e-6, nanometre);
    EXPECT_NEAR(build.foils[0].box.y0, 2e-3, nanometre);
    EXPECT_NEAR(build.layers[1].box.x0, build.foils[0].box.x1 + 8e-5, nanometre);
}

TEST(LayOut, TurnLengthAndResistanceFollowFromTheMiddleOfALayer) {
    const auto build = laid(small::transformer());
    for (const auto& l : build.layers) {
        const double expected = 2 * (16e-3 + 16e-3) + 8 * 1e-3 + 2 * std::numbers::pi * (l.box.middle() - 1e-3);
        EXPECT_NEAR(l.turnLength, expected, 1e-12);
        const double area = std::numbers::pi / 4 * small::bare * small::bare;
        EXPECT_NEAR(l.resistance20, 1.7241e-8 * l.turns * expected / area, 1e-9);
    }
    auto d = small::transformer();
    d.windings[0].resistanceFactor = 1.04;  // stretched
    EXPECT_NEAR(laid(d).layers[0].resistance20, 1.04 * build.layers[0].resistance20, 1e-9);
}

TEST(LayOut, FillingSoaksTheCoilOnlyWhenFilled) {
    auto d = small::transformer();
    d.filling = design::Filling{"paper", false};
    EXPECT_EQ(laid(d).fillPermittivity, 1);
    d.conditions.filled = true;
    EXPECT_EQ(laid(d).fillPermittivity, 2.5);
}

}  // namespace lay_out_test
