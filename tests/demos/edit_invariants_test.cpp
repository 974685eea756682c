// SPDX-License-Identifier: GPL-3.0-or-later
// What stays and what moves when a section is moved, and when the other end of a winding becomes the hot one.
#include <gtest/gtest.h>

#include <cmath>

#include "demo_designs.h"
#include "design/check.h"
#include "design/edit.h"

namespace edit_invariants_test {

using demos::valueOf;

double relativeChange(const analysis::Answer& before, const analysis::Answer& after, const std::string& figure) {
    return std::abs(valueOf(after, figure) / valueOf(before, figure) - 1);
}

/// The microphone input with its outer half of the primary moved inward to lie on the inner half: no interleaving.
class MovedSection : public testing::Test {
protected:
    void SetUp() override {
        const auto opened = demos::open("microphone-input");
        from_ = opened.design;
        const auto& order = from_->coil[0].order;
        design::ItemIndex outer{0, 0};
        for (std::size_t k = 0; k < order.size(); ++k)
            if (order[k].section() != nullptr && order[k].section()->label() == "P.b") outer.item = static_cast<int>(k);
        ASSERT_GT(outer.item, 1);
        to_ = design::moveItem(*from_, outer, {0, 1});
        ASSERT_EQ(to_->coil[0].order[1].section()->label(), "P.b");
        before_ = demos::answerOf("microphone-input");
        after_ = analysis::answer(*to_, demos::shop(), before_);
    }
    design::DesignPtr from_, to_;
    analysis::AnswerPtr before_, after_;
};

TEST_F(MovedSection, KeepsRatioAndTurns) {
    EXPECT_EQ(valueOf(*before_, "ratio.P.S"), valueOf(*after_, "ratio.P.S"));
    for (const auto& w : from_->windings)
        EXPECT_EQ(design::seriesTurns(*from_, w), design::seriesTurns(*to_, *design::winding(*to_, w.name)));
    EXPECT_EQ(before_->build->layers.size(), after_->build->layers.size());
}

TEST_F(MovedSection, KeepsResistanceOfLayersThatDidNotMove) {
    int unmoved = 0;
    for (const auto& layer : after_->build->layers)
        for (const auto& old : before_->build->layers)
            if (layer.winding == old.winding && layer.section == old.section && layer.number == old.number &&
                layer.box == old.box) {
                EXPECT_EQ(layer.resistance20, old.resistance20);
                EXPECT_EQ(layer.turnLength, old.turnLength);
                ++unmoved;
            }
    EXPECT_GE(unmoved, 2);  // the inner half of the primary
}

TEST_F(MovedSection, KeepsMainInductanceWithinItsLeakage) {
    const double difference = std::abs(valueOf(*after_, "inductance_10Hz.P") - valueOf(*before_, "inductance_10Hz.P"));
    EXPECT_LT(difference, valueOf(*before_, "leakage_10kHz.P.S") + valueOf(*after_, "leakage_10kHz.P.S"));
    EXPECT_LT(difference, 1e-3 * valueOf(*before_, "inductance_10Hz.P"));
}

TEST_F(MovedSection, ChangesMeanTurnsAndDcrOfWhatMoved) {
    EXPECT_LT(valueOf(*after_, "dcr.P"), 0.98 * valueOf(*before_, "dcr.P"));  // nearer to the tongue
    EXPECT_GT(valueOf(*after_, "dcr.S"), 1.02 * valueOf(*before_, "dcr.S"));  // pushed outward
}

TEST_F(MovedSection, ChangesLeakageAndCapacitance) {
    // Interleaving in two halves cuts leakage to about a quarter, less what insulation adds (Terman; from memory).
    const double ratio = valueOf(*after_, "leakage_10kHz.P.S") / valueOf(*before_, "leakage_10kHz.P.S");
    EXPECT_GT(ratio, 2);
    EXPECT_LT(ratio, 4.5);
    EXPECT_GT(relativeChange(*before_, *after_, "capacitance.P.inner shield"), 0.01);
    EXPECT_GT(relativeChange(*before_, *after_, "capacitance.S.inner shield"), 0.01);
    EXPECT_GT(relativeChange(*before_, *after_, "high_3dB_first"), 0.05);
}

/// A demo with the other end of its secondary or primary earthed by swapping the winding's ends.
class SwappedEnds : public testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(SwappedEnds, KeepsCopperAndLeakage) {
    const auto& [name, winding] = GetParam();
    const auto before = demos::answerOf(name);
    const auto after = analysis::answer(*design::swapEnds(*demos::open(name).design, winding), demos::shop(), before);
    for (const char* w : {"P", "S"})
        EXPECT_EQ(valueOf(*before, std::string("dcr.") + w), valueOf(*after, std::string("dcr.") + w));
    EXPECT_LT(relativeChange(*before, *after, "leakage_10kHz.P.S"), 0.01);
    EXPECT_LT(relativeChange(*before, *after, "inductance_10Hz.P"), 1e-9);
    EXPECT_TRUE(before->build->layers == after->build->layers);
}

INSTANTIATE_TEST_SUITE_P(Demos, SwappedEnds,
                         testing::Values(std::pair{"microphone-input", "S"}, std::pair{"direct-box", "P"}),
                         [](const auto& tried) { return std::string(tried.param.second); });

TEST(SwappedSecondary, ChangesInputCapacitanceAndTopEnd) {
    const auto before = demos::answerOf("microphone-input");
    const auto swapped = design::swapEnds(*demos::open("microphone-input").design, "S");
    const auto after = analysis::answer(*swapped, demos::shop(), before);
    EXPECT_GT(valueOf(*after, "input_capacitance.amplifier"), 2 * valueOf(*before, "input_capacitance.amplifier"));
    EXPECT_LT(valueOf(*after, "high_3dB_first"), 0.6 * valueOf(*before, "high_3dB_first"));
    // The same as earthing the other end at the port.
    EXPECT_NEAR(valueOf(*after, "high_3dB_first"), valueOf(*before, "high_3dB_first@other end earthed"),
                1e-3 * valueOf(*after, "high_3dB_first"));
}

TEST(SwappedPrimary, OfTheDirectBoxMovesItsTop) {
    const auto before = demos::answerOf("direct-box");
    const auto after =
        analysis::answer(*design::swapEnds(*demos::open("direct-box").design, "P"), demos::shop(), before);
    EXPECT_GT(relativeChange(*before, *after, "input_capacitance.instrument"), 0.02);
    // 1.3 % with sixteen pieces in every layer.
    EXPECT_NEAR(relativeChange(*before, *after, "high_3dB_first"), 0.013, 0.004);
}

class AnotherWinding : public testing::TestWithParam<const char*> {};

/// It is wound over all that was there and connected nowhere: what was soldered before keeps its turns and resistance,
/// and the new one has the voltage of its turns.
TEST_P(AnotherWinding, IsFoundByTheFigures) {
    const auto design = demos::open(GetParam()).design;
    const auto before = demos::answerOf(GetParam());
    const auto more = design::addWinding(*design, demos::shop());
    for (const auto& fault : design::check(*more, demos::shop(), GetParam())) ADD_FAILURE() << units::sentence(fault);
    const auto after = analysis::answer(*more, demos::shop(), before);
    const auto& first = design->windings.front();
    EXPECT_LT(relativeChange(*before, *after, "dcr." + first.name), 1e-12);
    const auto& fresh = more->windings.back();
    // How much of a winding's own flux counts as leakage is a choice of zero among all windings, within what they leak.
    const std::string own = "inductance_10Hz." + first.name;
    EXPECT_LT(std::abs(valueOf(*after, own) - valueOf(*before, own)),
              valueOf(*after, "leakage_10kHz." + first.name + "." + fresh.name));
    EXPECT_NEAR(valueOf(*after, "ratio." + first.name + "." + fresh.name),
                design::seriesTurns(*more, fresh) / design::seriesTurns(*more, first), 1e-9);
    EXPECT_GT(valueOf(*after, "dcr." + fresh.name), 0);
    EXPECT_GT(valueOf(*after, "leakage_10kHz." + first.name + "." + fresh.name), 0);
    EXPECT_EQ(*design::removeWinding(*more, fresh.name), *design);
}

INSTANTIATE_TEST_SUITE_P(Demos, AnotherWinding, testing::ValuesIn(demos::all), [](const auto& tried) {
    std::string name = tried.param;
    std::erase(name, '-');
    return name;
});

}  // namespace edit_invariants_test
