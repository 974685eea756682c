// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/result_words.h"

#include <gtest/gtest.h>

#include <cmath>

namespace result_words_test {

units::Figure figure(const std::string& name, double value, const std::string& unit,
                     const std::string& hookUp = "normal") {
    units::Figure f;
    f.name = name;
    f.value = value;
    f.unit = unit;
    f.uncertainty = unit == "dB" ? 0.1 : 0.03;
    f.hookUp = hookUp;
    return f;
}

analysis::Answer answer(double high, double low) {
    analysis::Answer a;
    a.hookUp = "normal";
    a.figures = {figure("high_3dB_first@shorted", 11000, "Hz", "shorted"), figure("high_3dB_first", high, "Hz"),
                 figure("low_3dB", low, "Hz"), figure("peak_level", 0.4, "dB"), figure("peak_frequency", 61000, "Hz")};
    auto trace = std::make_shared<analysis::Trace>();
    trace->name = "response";
    trace->frequency = {1, 1000, 1e6};
    trace->curves = {{"magnitude_dB", "response", units::Kind::Decibel, "dB", {-3, 0, high / -1e4}, false, {}},
                     {"phase_deg", "phase", units::Kind::Angle, "deg", {0, 0, high / 1e4}, false, {}}};
    a.traces = {trace};
    return a;
}

TEST(ResultWords, TheFigureOfTheHookUpShownIsMeant) {
    EXPECT_EQ(plots::figureOf(answer(84e3, 18), "high_3dB_first")->value, 84e3);
    EXPECT_EQ(plots::figureOf(answer(84e3, 18), "high"), nullptr) << "only whole words of a name";
}

TEST(ResultWords, MoreRejectionThanCanBeKnownIsSaidSo) {
    EXPECT_EQ(plots::written(figure("rejection_1kHz", 80, "dB")), "over 80 dB");
    EXPECT_EQ(plots::written(figure("rejection_1kHz@shorted", 80, "dB")), "over 80 dB");
    EXPECT_EQ(plots::written(figure("rejection_1kHz", 79, "dB")), "79.0 dB");
    EXPECT_EQ(plots::written(figure("screening_50Hz", 80, "dB")), "80.0 dB");
}

TEST(ResultWords, ACurveEndsWhereNoMoreIsKnown) {
    analysis::Curve curve{"rejection_dB", "rejection", units::Kind::Decibel, "dB", {70, 95}, false, {}, 80};
    EXPECT_EQ(plots::valueText(curve, 70), "70.0 dB");
    EXPECT_EQ(plots::valueText(curve, 95), "over 80.0 dB");
    EXPECT_EQ(plots::valueText(curve, std::nan("")), QString::fromUtf8("–"));
    analysis::Answer known;
    analysis::Trace trace;
    trace.frequency = {100, 1000};
    trace.curves = {curve};
    EXPECT_EQ(plots::summary(known, trace, {"rejection_dB"}),
              QString::fromUtf8("rejection from 70.0 dB at 100 Hz to over 80.0 dB at 1.00 kHz"));
}

TEST(ResultWords, UncertaintyHasOneDigitAndItsUnit) {
    EXPECT_EQ(plots::uncertaintyText(figure("gain_1kHz", 11.9, "dB")), QString::fromUtf8("± 0.1 dB"));
    EXPECT_EQ(plots::uncertaintyText(figure("dcr.P", 11.9, "ohm")), QString::fromUtf8("± 3 %"));
    units::Figure exact = figure("ratio.P.S", 5, "");
    exact.uncertainty = 0;
    EXPECT_EQ(plots::uncertaintyText(exact), "");
}

TEST(ResultWords, TheUnitStandsOnceWhereItIsTheSame) {
    EXPECT_EQ(plots::change("71 kHz", "84 kHz"), QString::fromUtf8("71 → 84 kHz"));
    EXPECT_EQ(plots::change("980 Hz", "1.02 kHz"), QString::fromUtf8("980 Hz → 1.02 kHz"));
}

TEST(ResultWords, ADifferenceNamesTheFiguresThatMoved) {
    const analysis::Answer held = answer(71e3, 18), now = answer(84e3, 18);
    EXPECT_EQ(plots::difference(held, now, "response", {"magnitude_dB"}, {1, 1e6}),
              QString::fromUtf8("−3 dB high: 71 → 84 kHz"));
    EXPECT_EQ(plots::difference(held, held, "response", {"magnitude_dB"}, {1, 1e6}), "same as the held trace");
}

TEST(ResultWords, ACurveWithoutFiguresTellsItsLargestDistance) {
    const QString words = plots::difference(answer(71e3, 18), answer(84e3, 18), "response", {"phase_deg"}, {1, 1e7});
    EXPECT_TRUE(words.startsWith("phase: at most")) << words.toStdString();
    EXPECT_TRUE(words.contains("1.3")) << words.toStdString();
    EXPECT_TRUE(words.endsWith("MHz")) << words.toStdString();
}

TEST(ResultWords, TheSummaryIsOneSentence) {
    const analysis::Answer a = answer(92e3, 18);
    EXPECT_EQ(plots::summary(a, *a.trace("response"), {"magnitude_dB", "phase_deg"}),
              QString::fromUtf8("−3 dB at 18.0 Hz and 92 kHz, peak %1 at 61 kHz")
                  .arg(plots::written(*a.figure("peak_level"))));
    EXPECT_TRUE(plots::summary(a, *a.trace("response"), {"phase_deg"}).startsWith("phase from 0"));
}

TEST(ResultWords, ATraceWithoutAnyValueSaysWhy) {
    analysis::Answer a = answer(92e3, 18);
    analysis::Trace empty = *a.trace("response");
    empty.name = "headroom";
    empty.curves = {{"maximum_level_dBu", "maximum level", units::Kind::LevelDbu, "dBu", {NAN, NAN, NAN}, false, {}}};
    empty.why = "the alloy has no saturation";
    EXPECT_EQ(plots::summary(a, empty, {"maximum_level_dBu"}), "nothing to show: the alloy has no saturation");
}

}  // namespace result_words_test
