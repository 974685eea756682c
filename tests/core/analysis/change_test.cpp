// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit did, in words, and what the other end of a winding at earth would do.
#include "analysis/change.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "analysis/other_end.h"
#include "design/edit.h"
#include "small_transformer.h"

namespace change_test {

using analysis::Move;

units::Figure figureOf(const std::string& name, double value, const std::string& unit, double uncertainty,
                       const std::string& hookUp = "normal") {
    units::Figure f;
    f.name = name;
    f.value = value;
    f.unit = unit;
    f.uncertainty = uncertainty;
    f.hookUp = hookUp;
    return f;
}

analysis::Answer answerWith(std::vector<units::Figure> figures) {
    analysis::Answer a;
    a.figures = std::move(figures);
    return a;
}

const double none = std::numeric_limits<double>::quiet_NaN();

TEST(Change, OneSentenceNamesEveryFigureThatMovedWithItsUnitOnce) {
    const auto before =
        answerWith({figureOf("high_3dB_first", 71e3, "Hz", 0.2), figureOf("leakage_10kHz.P.S", 119e-6, "H", 0.1, ""),
                    figureOf("input_capacitance.amplifier", 310e-12, "F", 0.25), figureOf("peak_level", 0.4, "dB", 0.5),
                    figureOf("low_3dB", 12, "Hz", 0.3)});
    const auto now =
        answerWith({figureOf("high_3dB_first", 84e3, "Hz", 0.2), figureOf("leakage_10kHz.P.S", 0.96e-6, "H", 0.1, ""),
                    figureOf("input_capacitance.amplifier", 250e-12, "F", 0.25),
                    figureOf("peak_level", -0.5, "dB", 0.5), figureOf("low_3dB", 12, "Hz", 0.3)});
    EXPECT_EQ(analysis::sentence(analysis::moves(before, now)),
              "leakage P–S 120 µH → 960 nH (−99 %), input capacitance amplifier 310 → 250 pF (−19 %), "
              "−3 dB high 71 → 84 kHz (+18 %), peak 0.4 → −0.5 dB (−0.9 dB)");
}

TEST(Change, WhatReadsTheSameAtItsOwnDigitsHasNotMoved) {
    const auto before = answerWith({figureOf("input_capacitance.amplifier", 310e-12, "F", 0.25)});
    EXPECT_TRUE(
        analysis::moves(before, answerWith({figureOf("input_capacitance.amplifier", 313e-12, "F", 0.25)})).empty());
    EXPECT_EQ(analysis::moves(before, answerWith({figureOf("input_capacitance.amplifier", 316e-12, "F", 0.25)})).size(),
              1U);
    EXPECT_EQ(analysis::sentence({}), "no figure moved");
}

TEST(Change, AFigureThatComesOrGoesIsNamedWithoutAShare) {
    const auto before = answerWith({figureOf("peak_frequency", none, "Hz", 0.2)});
    const auto now = answerWith({figureOf("peak_frequency", 61e3, "Hz", 0.2)});
    EXPECT_EQ(analysis::sentence(analysis::moves(before, now)), "peak at none → 61 kHz");
    EXPECT_TRUE(analysis::moves(before, before).empty());
}

TEST(Change, OfSeveralPairsTheOneThatMovedMostComesFirst) {
    const auto before = answerWith(
        {figureOf("leakage_10kHz.P.A", 1e-3, "H", 0.1, ""), figureOf("leakage_10kHz.P.B", 1e-3, "H", 0.1, "")});
    const auto now = answerWith(
        {figureOf("leakage_10kHz.P.A", 1.2e-3, "H", 0.1, ""), figureOf("leakage_10kHz.P.B", 0.5e-3, "H", 0.1, "")});
    const auto all = analysis::moves(before, now);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].figure, "leakage_10kHz.P.B");
    EXPECT_EQ(all[0].by, "−50 %");
    EXPECT_EQ(all[1].by, "+20 %");
}

TEST(Change, FiguresOfAnotherHookUpAreNotCompared) {
    const auto before = answerWith({figureOf("high_3dB_first", 71e3, "Hz", 0.2, "normal")});
    const auto now = answerWith({figureOf("high_3dB_first", 20e3, "Hz", 0.2, "bridged")});
    EXPECT_TRUE(analysis::moves(before, now).empty());
}

TEST(OtherEnd, EveryWindingWithOneColdEndHasOne) {
    const auto ends = analysis::otherEnds(small::transformer(), "");
    ASSERT_EQ(ends.size(), 2U);
    EXPECT_EQ(ends[0].words, "P the other way round");
    EXPECT_EQ(ends[0].design->windings[0].start, "2");
    EXPECT_EQ(ends[1].words, "S the other way round");
}

TEST(OtherEnd, APortsOwnEarthMovesToItsOtherTerminal) {
    auto d = small::transformer();
    d.hookUps[0].earths = {"core"};
    d.hookUps[0].ports[0].earthing = design::Earthing::Balanced;
    d.hookUps[0].ports[1].earthing = design::Earthing::MinusEarthed;
    const auto ends = analysis::otherEnds(d, "normal");
    ASSERT_EQ(ends.size(), 1U);
    EXPECT_EQ(ends[0].words, "3 earthed instead of 4 (output)");
    EXPECT_EQ(ends[0].design->hookUps[0].ports[1].earthing, design::Earthing::PlusEarthed);
    EXPECT_EQ(ends[0].design->windings, d.windings);
}

TEST(OtherEnd, BalancedAndJoinedWindingsHaveNone) {
    auto balanced = small::transformer();
    balanced.hookUps[0].earths = {"core"};
    EXPECT_TRUE(analysis::otherEnds(balanced, "").empty());
    auto joined = small::transformer();
    joined.hookUps[0].straps = {{"1", "3"}};
    EXPECT_TRUE(analysis::otherEnds(joined, "").empty());
}

/// One volt at the input stands on P's only layer, two on S's two. Along the axis u = 0…1, both wound in one sense:
/// P runs from 1 to 0 and the layer of S beside it from 2 to 1, so they are a volt apart everywhere. P the other way
/// round runs from 0 to -1, two volts below: the facing's energy is four times as large, P's own to the core (a third)
/// stays. S the other way round runs from 0 to -1 beside P, again a volt apart; its outer layer, which faced the core
/// with the square of u (1/3), then faces it with the square of 2 - u (7/3); what the ends of its layers gain and lose
/// to the core cancels but is part of the whole, so the gain stays below 2.
TEST(OtherEnd, InputCapacitanceMovesByTheEnergyOfTheLayersThatFaceEachOther) {
    const auto d = small::transformer();
    const auto shop = small::shop();
    const auto now = analysis::answer(d, shop);
    const double atFirst = now->figure("input_capacitance.input")->value;
    const auto ends = analysis::otherEnds(d, "");
    const auto turned = [&](std::size_t k) {
        return analysis::answer(*ends[k].design, shop)->figure("input_capacitance.input")->value - atFirst;
    };
    EXPECT_NEAR(turned(0) / now->figure("capacitance.P.S")->value, 3.0, 0.02);
    const double shareOfS = turned(1) / now->figure("capacitance.S.core")->value;
    EXPECT_GT(shareOfS, 1.0);
    EXPECT_LT(shareOfS, 2.0);
}

TEST(OtherEnd, WhatItWouldMoveIsWhatADesignMadeThatWayHas) {
    const auto d = small::transformer();
    const auto shop = small::shop();
    const auto now = analysis::answer(d, shop);
    const auto effects = analysis::otherEndEffects(d, shop, now);
    const auto ends = analysis::otherEnds(d, "");
    ASSERT_EQ(effects.size(), ends.size());
    for (std::size_t k = 0; k < ends.size(); ++k) {
        EXPECT_EQ(effects[k].words, ends[k].words);
        EXPECT_EQ(effects[k].moves, analysis::moves(*now, *analysis::answer(*ends[k].design, shop)));
        EXPECT_FALSE(effects[k].moves.empty());
        // Earths do not change what the windings share of their field.
        for (const Move& move : effects[k].moves) EXPECT_FALSE(move.figure.starts_with("leakage")) << move.figure;
    }
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(analysis::otherEndEffects(d, shop, now, stop.get_token()).empty());
}

}  // namespace change_test
