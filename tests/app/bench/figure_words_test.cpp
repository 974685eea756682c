// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/figure_words.h"

#include <gtest/gtest.h>

#include "analysis/figure_names.h"

namespace figure_words_test {

TEST(FigureWords, AFigureIsSaidWithWhatItIsOf) {
    EXPECT_EQ(bench::figureText("low_3dB"), "−3 dB, low");
    EXPECT_EQ(bench::figureText("leakage_10kHz.P.S"), "Leakage inductance, 10 kHz, P to S");
    EXPECT_EQ(bench::figureText("dcr.P@one output shorted"), "DC resistance, P");
    EXPECT_EQ(bench::figureText("fill"), "Fill");
    EXPECT_EQ(bench::figureText("no_such_figure.P"), "no_such_figure.P");
}

TEST(FigureWords, EveryFigureThatCanBePromisedHasWords) {
    design::Design one;
    one.windings.resize(2);
    one.windings[0].name = "P";
    one.windings[1].name = "S";
    one.ports.resize(1);
    one.ports[0].name = "line";
    const auto all = analysis::figureNames(one);
    EXPECT_GT(all.size(), 40U);
    for (const auto& name : all) EXPECT_NE(bench::figureText(name).toStdString(), name);
}

TEST(FigureWords, APromiseIsSaidInThem) {
    EXPECT_EQ(bench::promiseText("low_3dB: at most 12.0 Hz"), "−3 dB, low: at most 12.0 Hz");
    EXPECT_EQ(bench::promiseText("gain_1kHz at line (shorted): at least -8.00 dB"),
              "Gain re source EMF, 1 kHz at line (shorted): at least -8.00 dB");
    EXPECT_EQ(bench::promiseText("thin: peak_level: at most 1.50 dB, is 1.40 dB"),
              "thin: Peak, re 1 kHz: at most 1.50 dB, is 1.40 dB");
    EXPECT_EQ(bench::promiseText("mask on response"), "mask on response");
    analysis::Column column;
    column.promise = 0;
    column.mask = true;
    column.text = "mask on response";
    EXPECT_EQ(bench::columnText(column), "mask on response, margin");
}

}  // namespace figure_words_test
