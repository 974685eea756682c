// SPDX-License-Identifier: GPL-3.0-or-later
// Loops of metal round iron: found, computed, and refused with a sentence.
#include "design/closed_loop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "design/check.h"
#include "design/edit.h"
#include "design/unit_size.h"
#include "sample_design.h"

namespace design {
namespace closed_loop_test {

/// The sample's catalog with a band, a frame, a bolt, a can and reels.
catalog::Catalog shop() {
    catalog::Catalog all = sampleShop();
    catalog::Fitting band;
    band.form = catalog::FittingForm::Clamp;
    band.resistivity = 6e-8;
    band.strip = 0.005;
    band.thickness = 0.0005;
    band.round = catalog::Round::Tongue;
    band.width = band.length = band.height = 0.012;
    all.fittings["band"] = band;
    catalog::Fitting frame = band;
    frame.form = catalog::FittingForm::Frame;
    frame.resistivity = 1.5e-7;
    frame.round = catalog::Round::Nothing;
    frame.width = 0.034;
    all.fittings["frame"] = frame;
    catalog::Fitting bolt;
    bolt.form = catalog::FittingForm::Bolt;
    bolt.resistivity = 1.5e-7;
    bolt.thickness = 0.003;
    bolt.width = bolt.length = bolt.height = 0.05;
    all.fittings["bolt"] = bolt;
    bolt.resistivity = 0;
    all.fittings["plastic bolt"] = bolt;
    catalog::Fitting can;
    can.form = catalog::FittingForm::Can;
    can.thickness = 0.001;
    can.width = 0.032;
    can.length = 0.027;
    can.height = 0.021;
    all.fittings["can"] = can;
    catalog::Sundry lead;
    lead.colours = {"red", "blue"};
    all.sundries["lead"] = lead;
    lead.form = catalog::SundryForm::Tape;
    all.sundries["tape"] = lead;
    return all;
}

Design with(std::initializer_list<FittingUse> fittings) {
    Design d = sampleDesign();
    d.fittings = fittings;
    return d;
}
FittingUse use(const char* key, bool insulated = false) {
    return {key, 1, insulated, nullptr};
}
std::vector<std::string> said(const Design& d) {
    std::vector<std::string> all;
    for (const auto& fault : check(d, shop(), "f")) all.push_back(units::sentence(fault));
    return all;
}
using Sentences = std::vector<std::string>;

TEST(ClosedLoop, ABandIsItsStripUnrolled) {
    const auto loops = closedLoops(with({use("band")}), shop());
    ASSERT_EQ(loops.size(), 1U);
    // Tongue and stack of 10 mm each: 40 mm round, four corners of 0.5 mm; 5 x 0.5 mm2.
    EXPECT_NEAR(loops[0].resistance, 6e-8 * 0.042 / 2.5e-6, 1e-12);
    EXPECT_EQ(loops[0].share, 1);
    EXPECT_EQ(loops[0].words, "a clamp that closes a loop round the tongue");
    // Half of a shell's flux goes through an outer leg, all of it through one of two legs.
    catalog::Catalog other = shop();
    other.fittings["band"].round = catalog::Round::OuterLeg;
    EXPECT_EQ(closedLoops(with({use("band")}), other).at(0).share, 0.5);
    Design two = with({use("band")});
    two.core.kind = CoreKind::TwoLeg;
    EXPECT_EQ(closedLoops(two, other).at(0).share, 1);
}

TEST(ClosedLoop, ABoltClosesItsLoopByTheFrame) {
    const auto loops = closedLoops(with({use("frame"), use("bolt")}), shop());
    ASSERT_EQ(loops.size(), 1U);
    EXPECT_EQ(loops[0].fitting, 1U);
    EXPECT_EQ(loops[0].share, 0.25);
    const double bolt = 1.5e-7 * 0.01 / (std::numbers::pi * 0.0015 * 0.0015), frame = 1.5e-7 * 0.015 / 2.5e-6;
    EXPECT_NEAR(loops[0].resistance, bolt + frame, 1e-12);
}

TEST(ClosedLoop, IsNoneWhereAnythingBreaksIt) {
    for (const auto& fittings : std::vector<std::vector<FittingUse>>{{},
                                                                     {use("band", true)},
                                                                     {use("bolt")},
                                                                     {use("frame")},
                                                                     {use("frame"), use("plastic bolt")},
                                                                     {use("frame"), use("bolt", true)},
                                                                     {use("frame", true), use("bolt")},
                                                                     {use("can"), use("bolt")}}) {
        Design d = sampleDesign();
        d.fittings = fittings;
        EXPECT_TRUE(closedLoops(d, shop()).empty()) << fittings.size();
        EXPECT_EQ(said(d), Sentences{});
    }
}

TEST(ClosedLoop, LoadsAsATurnThatIsShorted) {
    // N : 1 and R behind it: an ideal transformer shows N^2 R; half of the flux is half of the turn, four times that.
    EXPECT_NEAR(loadOf({0, "", 1, 1e-3}, 1000), 1000, 1e-9);
    EXPECT_NEAR(loadOf({0, "", 0.5, 1e-3}, 1000), 4000, 1e-9);
    EXPECT_NEAR(loadOf({0, "", 1, 2e-3}, 1), 2e-3, 1e-15);
}

TEST(ClosedLoop, IsRefusedWithItsEffect) {
    // 100 turns of P: 10^4 x 1.008 mOhm.
    EXPECT_EQ(said(with({use("band")})),
              Sentences{"f: /fittings/0: found a clamp that closes a loop round the tongue, 1.01 mΩ: a shorted turn, "
                        "across P as 10.1 Ω; allowed is a loop broken by a bush, a washer or a gap (\"insulated\": "
                        "true), or a part that does not conduct."});
    const auto bolts = said(with({use("frame"), use("bolt")}));
    ASSERT_EQ(bolts.size(), 1U);
    EXPECT_TRUE(bolts[0].starts_with("f: /fittings/1: found a bolt that closes a loop round iron with the frame, "))
        << bolts[0];
}

TEST(FittingsCheck, SeatRoomKindAndColour) {
    Design d = with({use("can"), use("nothing there")});
    d.core.height = 0.012;
    d.sundries.lead = "tape";
    EXPECT_EQ(said(d), (Sentences{"f: /fittings/1/fitting: found \"nothing there\"; allowed is a key of the catalog's "
                                  "fittings, or an entry in curly brackets.",
                                  "f: /fittings/0/fitting: found a height inside of 20 mm; allowed is at least that of "
                                  "core and coil, 22 mm.",
                                  "f: /sundries/lead: found \"tape\", a sundry of form tape; allowed is one of form "
                                  "lead."}));
    d = with({});
    d.sundries.lead = "lead";
    d.terminals[1].leadColour = "green";
    EXPECT_EQ(said(d), Sentences{"f: /terminals/1/lead_colour: found \"green\"; allowed is a colour of the lead wire: "
                                 "red, blue."});
    catalog::Catalog tight = shop();
    tight.fittings["frame"].stackHeight = 0.008;
    tight.fittings["frame"].fits = "another";
    std::vector<std::string> all;
    for (const auto& fault : check(with({use("frame")}), tight, "f")) all.push_back(units::sentence(fault));
    EXPECT_EQ(all, (Sentences{"f: /fittings/0/fitting: found a part made for another; allowed is one that fits sheet, "
                              "or any sheet.",
                              "f: /fittings/0/fitting: found room for a stack of 8 mm; allowed is at least the closed "
                              "height, 10 mm."}));
}

TEST(UnitSize, GrowsByWhatStandsOut) {
    const UnitSize bare = unitSize(sampleDesign(), shop());
    EXPECT_EQ(bare, (UnitSize{0.03, 0.025, 0.02}));
    EXPECT_EQ(unitSize(with({use("bolt")}), shop()), bare);
    EXPECT_EQ(unitSize(with({use("frame")}), shop()), (UnitSize{0.034, 0.025, 0.02}));
    EXPECT_EQ(unitSize(with({use("can")}), shop()), (UnitSize{0.032, 0.027, 0.021}));
}

TEST(Fittings, AreCopiedWithTheDesign) {
    Design d = with({use("band", true)});
    d.sundries.tape = "tape";
    const DesignPtr stored = withStoredParts(d, shop());
    EXPECT_EQ(stored->parts.fittings.at("band"), shop().fittings.at("band"));
    EXPECT_EQ(stored->parts.sundries.at("tape"), shop().sundries.at("tape"));
    EXPECT_EQ(stored->parts.fittings.size(), 1U);
}

}  // namespace closed_loop_test
}  // namespace design
