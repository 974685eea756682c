// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/difference.h"

#include <gtest/gtest.h>

#include "design/edit.h"
#include "sample_design.h"

namespace design {
namespace difference_test {

using Lines = std::vector<std::string>;

Lines after(const std::function<void(Design&)>& change) {
    const Design d = sampleDesign();
    return differences(d, *changed(d, change));
}

TEST(Differences, NoneBetweenEqualDesigns) {
    EXPECT_EQ(differences(sampleDesign(), sampleDesign()), Lines{});
}

TEST(Differences, FieldsAreNamedWithTheirUnits) {
    EXPECT_EQ(after([](Design& d) { d.coil[0].order[0].section()->turns = 130; }), Lines{"P.a turns: 60 → 130"});
    EXPECT_EQ(after([](Design& d) { d.core.height = 0.012; }), Lines{"core stack height: 10 mm → 12 mm"});
    EXPECT_EQ(after([](Design& d) { d.conditions.temperature = 40; }), Lines{"temperature: 20 °C → 40 °C"});
    EXPECT_EQ(after([](Design& d) { d.assumptions.ends = Ends::Walled; }), Lines{"assumption ends: beyond → walled"});
    EXPECT_EQ(after([](Design& d) { d.coil[0].order[0].section()->lay = Lay::Nested; }),
              Lines{"P.a lay: layers → nested"});
    EXPECT_EQ(after([](Design& d) { d.core.stack[0].permeabilityFactor = 0.9; }),
              Lines{"core stack 1 permeability factor: 1 → 0.9"});
    EXPECT_EQ(after([](Design& d) { d.bobbin = "wide"; }), Lines{"bobbin: bobbin → wide"});
    EXPECT_EQ(after([](Design& d) { d.name = "new"; }), Lines{"name: sample → new"});
}

TEST(Differences, FittingsAndReelsAreNamed) {
    const auto bolts = [](Design& d) {
        d.fittings = {{"frame", 1, false, nullptr}, {"bolt", 4, true, nullptr}};
        d.sundries.tape = "wide tape";
    };
    EXPECT_EQ(after(bolts),
              (Lines{"fitting 1: none → frame", "fitting 1 count: none → 1", "fitting 1 insulated: none → no",
                     "fitting 2: none → bolt", "fitting 2 count: none → 4", "fitting 2 insulated: none → yes",
                     "tape: none → wide tape"}));
}

TEST(Differences, TolerancesAndNotesShow) {
    EXPECT_EQ(after([](Design& d) {
                  d.core.height.tolerance.emplace().plusMinus = 0.05;
                  d.core.height.note = "pressed";
              }),
              Lines{"core stack height: 10 mm → 10 mm ±5 % (pressed)"});
}

TEST(Differences, HookUpsSayWhatHangsWhere) {
    EXPECT_EQ(after([](Design& d) { d.hookUps[0].ports[0].through->resistance = 200; }),
              Lines{"hook-up normal port input through resistance: 150 Ω → 200 Ω"});
    EXPECT_EQ(after([](Design& d) { d.hookUps[0].straps.clear(); }), Lines{"hook-up normal straps: SH with 4 → none"});
    EXPECT_EQ(after([](Design& d) { d.hookUps[0].earths.push_back("SH"); }),
              Lines{"hook-up normal earths: core, 4 → core, 4, SH"});
    EXPECT_EQ(after([](Design& d) {
                  d.hookUps.push_back(d.hookUps[0]);
                  d.hookUps[1].name = "shorted";
              }),
              Lines{"hook-up shorted added"});
}

TEST(Differences, AMoveIsAMove) {
    const Design d = sampleDesign();
    EXPECT_EQ(differences(d, *moveItem(d, {0, 4}, {0, 2})), Lines{"S.a moved inward past foil SH"});
    EXPECT_EQ(differences(*moveItem(d, {0, 4}, {0, 2}), d), Lines{"S.a moved outward past foil SH"});
    const DesignPtr inner = moveItem(d, {0, 5}, {0, 0});
    EXPECT_EQ(differences(d, *inner),
              (Lines{"winding P order: as wound → a, b", "P.b moved inward past P.a and foil SH and S.a"}));
    EXPECT_EQ(differences(d, *moveItem(d, {0, 2}, {1, 0})), Lines{"foil SH moved to chamber 2"});
}

TEST(Differences, BarriersChangeMoveComeAndGo) {
    const Design d = sampleDesign();
    EXPECT_EQ(after([](Design& c) { c.coil[0].order[1].barrier()->ply.thickness = 1e-4; }),
              Lines{"barrier outside P.a thickness: 0.05 mm → 0.1 mm"});
    EXPECT_EQ(differences(d, *removeItem(d, {0, 3})), Lines{"barrier film 0.08 mm outside foil SH removed"});
    EXPECT_EQ(differences(d, *insertItem(d, {0, 0}, barrierItem(2e-4))),
              Lines{"barrier film 0.2 mm added next to the core"});
    EXPECT_EQ(differences(d, *moveItem(d, {0, 1}, {0, 6})), Lines{"barrier film 0.05 mm moved outside P.b"});
}

TEST(Differences, SectionsComeAndGo) {
    const Design d = sampleDesign();
    EXPECT_EQ(differences(d, *splitSection(d, {0, 0})),
              (Lines{"P.a turns: 60 → 30", "P.c with 30 turns added outside P.a"}));
    EXPECT_EQ(differences(d, *removeItem(d, {1, 0})), Lines{"S.b removed"});
}

TEST(Differences, OwnPartsAreComparedFieldByField) {
    Design a = sampleDesign();
    catalog::Wire wire = sampleShop().wires["wire"];
    a.windings[0].wire.own = std::make_shared<catalog::Wire>(wire);
    a.windings[0].wire.key.clear();
    Design b = a;
    wire.overallDiameter = 1.3e-4;
    b.windings[0].wire.own = std::make_shared<catalog::Wire>(wire);
    EXPECT_EQ(differences(a, b), Lines{"winding P wire overall diameter: 0.12 mm → 0.13 mm"});
}

}  // namespace difference_test
}  // namespace design
