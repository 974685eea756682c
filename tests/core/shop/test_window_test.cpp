// SPDX-License-Identifier: GPL-3.0-or-later
// Limits of readings: checks are arithmetic by hand.
#include "shop/test_window.h"

#include <gtest/gtest.h>

#include <cmath>

namespace test_window_test {

using shop::Expected;
using shop::Promised;
using shop::Sides;
using shop::Window;
using units::Kind;

TEST(TestWindow, ModelAndToleranceAddBySquaresAndTheGuardBandGoesInward) {
    // 0.3 and 0.4 make 0.5: 100 / 1.5 and 150, less 1 on each side.
    const Window w = shop::window({100, 0.3, 0.4, true}, 1, {}, Sides::Both, Kind::Resistance);
    EXPECT_NEAR(*w.low, 100 / 1.5 + 1, 1e-9);
    EXPECT_NEAR(*w.high, 149, 1e-9);
    EXPECT_EQ(w.doubt, "");
    EXPECT_FALSE(w.needed);
    EXPECT_EQ(w.origin, "predicted 100.0 Ω: model ±30 %, 99 % of units ±40 %, guard band ±1.0 Ω");
}

TEST(TestWindow, EitherDoubtAloneWidensALimit) {
    const auto high = [](double model, double tolerance) {
        return *shop::window({100, model, tolerance, true}, 1, {}, Sides::Both, Kind::Inductance).high;
    };
    EXPECT_GT(high(0.3, 0.2), high(0.3, 0.1));
    EXPECT_GT(high(0.3, 0.1), high(0.2, 0.1));
}

TEST(TestWindow, WhereUnitsDifferLessThanTheInstrumentCanTellTheWindowIsItsLeastWidth) {
    // Gain within 0.0005 dB, an instrument of 0.02 dB: without care −0.02 … +0.02 inverted.
    const Window w = shop::window({-1.5, 0, 0.0005, false}, 0.02, {}, Sides::Both, Kind::Decibel);
    EXPECT_NEAR(*w.low, -1.52, 1e-12);
    EXPECT_NEAR(*w.high, -1.48, 1e-12);
    ASSERT_TRUE(w.needed);
    EXPECT_NEAR(*w.needed, 0.00025, 1e-15);
    EXPECT_EQ(w.doubt,
              "the instrument cannot judge by tolerance here: units differ by less than it can tell, so the limits are "
              "its own least width; ±0.00025 dB would be needed");
}

TEST(TestWindow, IsNeverInvertedWhateverIsAskedOfIt) {
    for (const double instrument : {1e-6, 1e-3, 0.1, 3.0})
        for (const double tolerance : {0.0, 1e-6, 0.01, 1.0})
            for (const double low : {-5.0, -0.001, 0.0, 2.0}) {
                const Promised promised{low, low + 0.01, "promise"};
                for (const auto sides : {Sides::Both, Sides::AtLeast, Sides::AtMost}) {
                    const Window w =
                        shop::window({0, 0.0, tolerance, false}, instrument, promised, sides, Kind::Decibel);
                    ASSERT_TRUE(w.low && w.high);
                    EXPECT_LT(*w.low, *w.high);
                    EXPECT_GE(*w.low, *promised.atLeast);
                    EXPECT_LE(*w.high, *promised.atMost);
                }
            }
}

TEST(TestWindow, APromiseDrawsInWithItsOwnGuardBandAndNeverWidens) {
    const Expected e{10, 0.1, 0, true};
    EXPECT_NEAR(*shop::window(e, 0.1, {9.8, {}, "promise"}, Sides::Both, Kind::Number).low, 9.9, 1e-12);
    // A promise far outside leaves the expected window as it is.
    EXPECT_NEAR(*shop::window(e, 0.1, {1, {}, "promise"}, Sides::Both, Kind::Number).low, 10 / 1.1 + 0.1, 1e-12);
    EXPECT_NEAR(*shop::window(e, 0.1, {{}, 10.5, "promise"}, Sides::Both, Kind::Number).high, 10.4, 1e-12);
}

TEST(TestWindow, ALimitNextToThePromiseIsNoNarrowerThanCanBeTold) {
    const Window w = shop::window({0, 0, 0, false}, 0.5, {0, {}, "promise"}, Sides::Both, Kind::Decibel);
    EXPECT_EQ(w.low, 0.5);
    EXPECT_EQ(w.high, 1.5);
    EXPECT_NE(w.doubt.find("within a guard band of the promise"), std::string::npos);
}

TEST(TestWindow, APromiseThatIsPredictedToBreakRulesAlone) {
    const Window w = shop::window({10, 0.01, 0, true}, 0.01, {12, {}, "promise"}, Sides::Both, Kind::Number);
    EXPECT_NEAR(*w.low, 12.01, 1e-12);
    EXPECT_FALSE(w.high);
    EXPECT_EQ(w.doubt, "the design is predicted to break this promise: the limits are the promise alone");
}

TEST(TestWindow, ATooNarrowPromiseStandsAndIsSaidNotToBeJudged) {
    const Window w = shop::window({10, 0.1, 0, true}, 0.5, {9.9, 10.1, "promise"}, Sides::Both, Kind::Number);
    EXPECT_EQ(w.low, 9.9);
    EXPECT_EQ(w.high, 10.1);
    EXPECT_NEAR(*w.needed, 0.05, 1e-12);
    EXPECT_NE(w.doubt.find("cannot judge it"), std::string::npos);
}

TEST(TestWindow, OneSideIsEnoughForAtLeast) {
    const Window w = shop::window({80, 3, 4, false}, 1, {}, Sides::AtLeast, Kind::Decibel);
    EXPECT_NEAR(*w.low, 76, 1e-12);
    EXPECT_FALSE(w.high);
}

TEST(TestWindow, WithoutAPredictionThePromiseIsAllThereIs) {
    const Window w = shop::window({std::nan(""), 0.1, 0.1, true}, 1, {5, {}, "promise"}, Sides::Both, Kind::Number);
    EXPECT_EQ(w.low, 6);
    EXPECT_FALSE(w.high);
    EXPECT_EQ(shop::window({std::nan(""), 0, 0, true}, 1, {}, Sides::Both, Kind::Number).doubt,
              "nothing is predicted here");
}

}  // namespace test_window_test
