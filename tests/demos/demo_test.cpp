// SPDX-License-Identifier: GPL-3.0-or-later
// The demo designs as files and as answers: opened, saved, fitting, keeping their promises, finite in every hook-up.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

#include "demo_designs.h"

namespace demo_test {

using analysis::Standing;

class Demo : public testing::TestWithParam<const char*> {};

TEST_P(Demo, OpensWithoutNotesAndSavesTheSameBytes) {
    const auto text = exchange::readFile(demos::pathOf(GetParam()));
    const auto opened = exchange::readDesign(text, demos::pathOf(GetParam()), demos::shop());
    EXPECT_TRUE(opened.notes.empty());
    EXPECT_EQ(exchange::writeDesign(*opened.design, demos::shop()), text);
}

TEST_P(Demo, StandsWithoutTheShopsCatalog) {
    const auto text = exchange::readFile(demos::pathOf(GetParam()));
    const auto alone = exchange::readDesign(text, demos::pathOf(GetParam()), {});
    EXPECT_EQ(exchange::writeDesign(*alone.design, {}), text);
}

TEST_P(Demo, SaysThatItIsInvented) {
    const auto opened = demos::open(GetParam());
    EXPECT_NE(opened.design->note.find("nvented"), std::string::npos);
    EXPECT_NE(opened.design->brief.customer.find("invented"), std::string::npos);
    const auto readme =
        exchange::readFile(std::string(COILWRIGHT_SOURCE_DIR) + "/demo-projects/" + GetParam() + "/README.md");
    EXPECT_NE(readme.find("Invented design for an invented customer"), std::string::npos);
}

TEST_P(Demo, HasABriefAndSeveralHookUps) {
    const auto opened = demos::open(GetParam());
    const auto& d = *opened.design;
    EXPECT_GE(d.brief.promises.size(), 5U);
    EXPECT_FALSE(d.brief.masks.empty());
    EXPECT_GT(d.brief.size.length, 0);
    EXPECT_GE(d.hookUps.size(), 2U);
}

TEST_P(Demo, FitsItsWindow) {
    const auto answer = demos::answerOf(GetParam());
    for (const auto& chamber : answer->build->fill) {
        EXPECT_TRUE(chamber.problems.empty());
        EXPECT_LT(chamber.over, 0);
        EXPECT_GE(chamber.heightShare, 0.6);
        EXPECT_LE(chamber.heightShare, 0.9);
        EXPECT_LT(chamber.buildMaximum, chamber.room.width());
    }
    for (const auto& layer : answer->build->layers)
        EXPECT_TRUE(layer.random || layer.conductor.bare >= 50e-6) << layer.winding;  // finer wire is wound wild
}

TEST_P(Demo, BreaksNoPromiseAndHasOneThinAtMost) {
    const auto answer = demos::answerOf(GetParam());
    int thin = 0;
    for (const auto& promise : answer->promises) {
        EXPECT_NE(promise.standing, Standing::Broken) << promise.text;
        EXPECT_NE(promise.standing, Standing::Unknown) << promise.text << " " << promise.why;
        thin += promise.standing == Standing::Thin ? 1 : 0;
    }
    EXPECT_LE(thin, 1);
}

TEST_P(Demo, AnswersEveryHookUpWithFiniteNumbers) {
    const auto opened = demos::open(GetParam());
    auto answer = demos::answerOf(GetParam());
    for (const auto& hookUp : opened.design->hookUps) {
        analysis::Question question;
        question.hookUp = hookUp.name;
        answer = analysis::answer(*opened.design, demos::shop(), answer, {}, question);
        EXPECT_EQ(answer->hookUp, hookUp.name);
        for (const auto& figure : answer->figures)
            EXPECT_TRUE(!figure.valid || std::isfinite(figure.value)) << figure.name;
        ASSERT_NE(answer->trace("response"), nullptr) << hookUp.name;
        EXPECT_NE(answer->trace("impedance"), nullptr) << hookUp.name;
        for (const auto& trace : answer->traces)
            for (const auto& curve : trace->curves)
                EXPECT_TRUE(std::all_of(curve.y.begin(), curve.y.end(), [](double y) { return std::isfinite(y); }))
                    << hookUp.name << " " << curve.name;
    }
}

TEST_P(Demo, FiguresAreWithinValidityInTheFirstHookUp) {
    const auto answer = demos::answerOf(GetParam());
    for (const auto& figure : answer->figures)
        EXPECT_TRUE(figure.valid || figure.name.find('@') != std::string::npos) << figure.name << " " << figure.why;
}

INSTANTIATE_TEST_SUITE_P(Projects, Demo, testing::ValuesIn(demos::all), [](const auto& tried) {
    std::string name = tried.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

// What an experienced designer would expect of each, from plain handbook sums.

TEST(MicrophoneInput, NoiseFigureIsThatOfItsResistances) {
    // F = 1 + T/T0 (Rw/Rg + (Rg + Rw)^2 / (Rg RL)), Rw = Rp + Rs/n^2, RL = 100 kilohm / n^2 (check row N-NF4), and a
    // little more for the loss in the sheets.
    const auto& a = *demos::answerOf("microphone-input");
    const double copper = demos::valueOf(a, "dcr.P") + demos::valueOf(a, "dcr.S") / 49;
    const double factor = 1 + copper / 150 + (150 + copper) * (150 + copper) / (150 * 100e3 / 49);
    const double expected = 10 * std::log10(1 + (factor - 1) * 293.15 / 290);
    EXPECT_GT(demos::valueOf(a, "noise_figure_1kHz"), expected);
    EXPECT_LT(demos::valueOf(a, "noise_figure_1kHz"), expected + 0.05);
}

TEST(MicrophoneInput, GainIsTheTurnsRatioLessCopperAndCore) {
    // The handbook's T at 1 kHz: source and primary copper, the core across, secondary copper and load, all seen from
    // the primary.
    const auto& a = *demos::answerOf("microphone-input");
    const double primary = demos::valueOf(a, "dcr.P"), secondary = demos::valueOf(a, "dcr.S") / 49, load = 100e3 / 49;
    const std::complex<double> core = std::complex<double>(0, 2 * std::numbers::pi * 1e3) * 300.0 * 300.0 *
                                      magnetics::turnInductance(*a.stages->core, 1e3);
    const auto across = 1.0 / (1.0 / core + 1 / (secondary + load));
    const double gain = std::abs(7.0 * across / (150 + primary + across)) * load / (secondary + load);
    EXPECT_NEAR(demos::valueOf(a, "gain_1kHz"), 20 * std::log10(gain), 0.002);
}

TEST(MicrophoneInput, ShieldsRejectCommonMode) {
    const auto& a = *demos::answerOf("microphone-input");
    EXPECT_LT(demos::valueOf(a, "gain_1kHz@common mode") - demos::valueOf(a, "gain_1kHz"), -80);
}

TEST(MicrophoneInput, OtherEndEarthedLosesTheTop) {
    const auto& a = *demos::answerOf("microphone-input");
    EXPECT_LT(demos::valueOf(a, "high_3dB_first@other end earthed"), 0.6 * demos::valueOf(a, "high_3dB_first"));
    EXPECT_GT(demos::valueOf(a, "input_capacitance.amplifier@other end earthed"),
              2 * demos::valueOf(a, "input_capacitance.amplifier"));
}

TEST(RibbonStepUp, CopperIsAQuarterOfTheSource) {
    const auto& a = *demos::answerOf("ribbon-step-up");
    const double copper = demos::valueOf(a, "dcr.P") + demos::valueOf(a, "dcr.S") / 900;
    EXPECT_GT(copper / 0.2, 0.15);
    EXPECT_LT(copper / 0.2, 0.30);
    EXPECT_NEAR(demos::valueOf(a, "ratio.P.S"), 30, 1e-12);
}

TEST(LineUnit, HalvesInParallelTakeHalfTheLevel) {
    const auto& a = *demos::answerOf("line-unit");
    const double series = demos::valueOf(a, "maximum_level_20Hz"),
                 parallel = demos::valueOf(a, "maximum_level_20Hz@parallel to series");
    EXPECT_NEAR(series - parallel, 20 * std::log10(2.0), 0.5);
    EXPECT_NEAR(demos::valueOf(a, "gain_1kHz@parallel to series") - demos::valueOf(a, "gain_1kHz"),
                20 * std::log10(2.0), 0.5);
    // Impedance at low frequency goes as the square of the turns.
    EXPECT_NEAR(demos::valueOf(a, "impedance_20Hz.in") / demos::valueOf(a, "impedance_20Hz.in@parallel to series"), 4,
                0.1);
}

TEST(Splitter, OneShortedOutputLeavesWhatItsCopperLeaves) {
    // The short is Rp + R3 across the source but for the leakage; the others see what stands across R3.
    const auto& a = *demos::answerOf("splitter");
    const double p = demos::valueOf(a, "dcr.P"), s3 = demos::valueOf(a, "dcr.S3");
    EXPECT_NEAR(demos::valueOf(a, "gain_1kHz@one output shorted"), 20 * std::log10(s3 / (150 + p + s3)), 0.5);
}

}  // namespace demo_test
