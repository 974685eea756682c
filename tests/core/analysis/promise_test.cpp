// SPDX-License-Identifier: GPL-3.0-or-later
// Kept, thin, broken: promises and masks on an answer made by hand, and crossings on functions that are known.
#include "analysis/promise.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "analysis/figure_making.h"
#include "small_transformer.h"

namespace promise_test {

using analysis::Standing;

units::Figure figureOf(const std::string& name, double value, const std::string& unit) {
    units::Figure f;
    f.name = name;
    f.value = value;
    f.unit = unit;
    return f;
}

/// An answer of two figures and a response that falls by `fall` dB at 10 kHz.
analysis::Answer answerWith(double fall) {
    analysis::Answer a;
    a.hookUp = "normal";
    a.figures = {figureOf("high_3dB_first", 60e3, "Hz"),
                 figureOf("insertion_loss", 1.0, "dB"),
                 figureOf("impedance_1kHz.input", 1500, "ohm"),
                 figureOf("gain_1kHz@bridged", 2, "dB"),
                 figureOf("peak_level", std::numeric_limits<double>::quiet_NaN(), "dB"),
                 figureOf("low_3dB", std::numeric_limits<double>::quiet_NaN(), "Hz")};
    analysis::Trace t;
    t.name = "response";
    t.hookUp = "normal";
    t.frequency = {20, 100, 1000, 10000, 20000};
    t.curves.push_back({"magnitude_dB", "response", units::Kind::Decibel, "dB", {15, 15, 15, 15 - fall, 0}, false, {}});
    a.traces.push_back(std::make_shared<const analysis::Trace>(t));
    return a;
}

design::Design promising(const std::string& figure, std::optional<double> atLeast, std::optional<double> atMost) {
    auto d = small::transformer();
    d.brief.promises.resize(1);
    d.brief.promises[0].figure = figure;
    d.brief.promises[0].atLeast = atLeast;
    d.brief.promises[0].atMost = atMost;
    return d;
}

analysis::PromiseState stateOf(const design::Design& d, double fall = 0) {
    const auto states = analysis::promiseStates(d, answerWith(fall));
    EXPECT_EQ(states.size(), 1U);
    return states.front();
}

TEST(Promise, KeptThinBrokenByShareOfTheLimit) {
    const auto kept = stateOf(promising("high_3dB_first", 50e3, {}));
    EXPECT_EQ(kept.standing, Standing::Kept);
    EXPECT_NEAR(kept.margin, 10e3, 1e-6);
    EXPECT_NEAR(kept.marginShare, 0.2, 1e-12);
    EXPECT_EQ(stateOf(promising("high_3dB_first", 55e3, {})).standing, Standing::Thin);
    const auto broken = stateOf(promising("high_3dB_first", 61e3, {}));
    EXPECT_EQ(broken.standing, Standing::Broken);
    EXPECT_NEAR(broken.margin, -1e3, 1e-6);
    EXPECT_EQ(stateOf(promising("high_3dB_first", {}, 70e3)).standing, Standing::Kept);
    EXPECT_EQ(stateOf(promising("high_3dB_first", {}, 59e3)).standing, Standing::Broken);
}

TEST(Promise, HalfADecibelIsThin) {
    EXPECT_EQ(stateOf(promising("insertion_loss", {}, 1.6)).standing, Standing::Kept);
    EXPECT_EQ(stateOf(promising("insertion_loss", {}, 1.4)).standing, Standing::Thin);
    EXPECT_EQ(stateOf(promising("insertion_loss", {}, 0.9)).standing, Standing::Broken);
}

TEST(Promise, OfTwoLimitsTheTighterRules) {
    const auto state = stateOf(promising("high_3dB_first", 40e3, 62e3));
    EXPECT_EQ(state.limit, 62e3);
    EXPECT_EQ(state.standing, Standing::Thin);
}

TEST(Promise, NamesItsPortAndHookUp) {
    auto d = promising("impedance_1kHz", 1000, {});
    d.brief.promises[0].port = "input";
    EXPECT_EQ(stateOf(d).standing, Standing::Kept);
    EXPECT_EQ(stateOf(d).now, 1500);
    d = promising("gain_1kHz", 1, {});
    d.brief.promises[0].hookUp = "bridged";
    EXPECT_EQ(stateOf(d).now, 2);
}

TEST(Promise, WhatDoesNotOccurKeepsItsLimit) {
    EXPECT_EQ(stateOf(promising("low_3dB", {}, 10)).standing, Standing::Kept);
    EXPECT_EQ(stateOf(promising("low_3dB", 10, {})).standing, Standing::Unknown);
    EXPECT_EQ(stateOf(promising("peak_level", {}, 1)).standing, Standing::Kept);
    EXPECT_EQ(stateOf(promising("dcr.Q", {}, 1)).standing, Standing::Unknown);
}

design::Design masked(std::vector<design::MaskPoint> points) {
    auto d = small::transformer();
    d.brief.masks.resize(1);
    d.brief.masks[0].trace = "response";
    d.brief.masks[0].points = std::move(points);
    return d;
}

TEST(Mask, IsReadRelativeTo1kHz) {
    const auto d = masked({{20, -1, 1}, {10000, -1, 1}});
    EXPECT_EQ(stateOf(d, 0.2).standing, Standing::Kept);
    const auto thin = stateOf(d, 0.7);
    EXPECT_EQ(thin.standing, Standing::Thin);
    EXPECT_TRUE(thin.mask);
    EXPECT_EQ(thin.frequency, 10000);
    EXPECT_NEAR(thin.now, -0.7, 1e-12);
    EXPECT_NEAR(thin.margin, 0.3, 1e-12);
    EXPECT_EQ(stateOf(d, 1.2).standing, Standing::Broken);
}

TEST(Mask, LimitsRunStraightOverLogFrequency) {
    // From -1 dB at 1 kHz to -3 dB at 100 kHz: -2 dB at 10 kHz. No upper limit anywhere.
    const auto d = masked({{1000, -1, {}}, {100e3, -3, {}}});
    EXPECT_NEAR(stateOf(d, 1.9).limit, -10.0 / 10 - 2 * std::log(20.0) / std::log(100.0), 1e-12);  // at 20 kHz
    EXPECT_EQ(stateOf(masked({{1000, -1, {}}, {19999, -3, {}}}), 3.1).standing, Standing::Broken);
    const auto inside = stateOf(masked({{1000, -1, {}}, {10000, -3, {}}}), 2.9);
    EXPECT_NEAR(inside.margin, 0.1, 1e-12);
    // Outside its corners and where a corner says nothing there is no limit.
    EXPECT_EQ(stateOf(masked({{50, -1, {}}, {10000, {}, 1}}), 9).standing, Standing::Unknown);
}

TEST(Mask, OnBalanceRestsOnNoMoreThanEightyDecibels) {
    auto d = masked({{20, 95, {}}, {1000, 70, {}}, {10000, 70, {}}});
    d.brief.masks[0].trace = "balance";
    analysis::Answer answer;
    auto trace = std::make_shared<analysis::Trace>();
    trace->name = "balance";
    trace->frequency = {20, 1000};
    trace->curves = {{"rejection_dB", "rejection", units::Kind::Decibel, "dB", {110, 78}, false, {}}};
    answer.traces.push_back(trace);
    const auto state = analysis::promiseStates(d, answer).front();
    EXPECT_EQ(state.standing, Standing::Kept);
    EXPECT_NEAR(state.margin, 8, 1e-12);
    EXPECT_EQ(state.why, "judged at 80 dB");
    trace->curves[0].y = {79, 78};
    EXPECT_EQ(analysis::promiseStates(d, answer).front().standing, Standing::Broken);
}

TEST(Mask, OfAnotherHookUpIsNotJudged) {
    auto d = masked({{20, -1, 1}, {10000, -1, 1}});
    d.brief.masks[0].hookUp = "bridged";
    EXPECT_EQ(stateOf(d, 0).standing, Standing::Unknown);
}

TEST(Promise, BrokenOnesComeFirst) {
    auto d = promising("high_3dB_first", 50e3, {});
    d.brief.promises.push_back(d.brief.promises[0]);
    d.brief.promises[1].atLeast = 90e3;
    d.brief.promises.push_back(d.brief.promises[0]);
    d.brief.promises[2].atLeast = 58e3;
    const auto states = analysis::promiseStates(d, answerWith(0));
    ASSERT_EQ(states.size(), 3U);
    EXPECT_EQ(states[0].index, 1);
    EXPECT_EQ(states[1].index, 2);
    EXPECT_EQ(states[2].index, 0);
    EXPECT_EQ(analysis::word(states[0].standing), "broken");
    EXPECT_EQ(analysis::word(states[1].standing), "thin");
    EXPECT_EQ(analysis::word(states[2].standing), "kept");
}

TEST(Crossing, FirstFallOfAFirstOrderSlope) {
    const double corner = 12345;
    const auto level = [&](double f) { return -10 * std::log10(1 + (f / corner) * (f / corner)); };
    const auto up = analysis::firstFall(level, 1000, 1e6, 10 * std::log10(0.5));
    ASSERT_TRUE(up.found);
    EXPECT_NEAR(up.frequency / corner, 1, 1e-8);
    const auto low = [&](double f) { return -10 * std::log10(1 + (7 / f) * (7 / f)); };
    const auto down = analysis::firstFall(low, 1000, 0.1, 10 * std::log10(0.5));
    ASSERT_TRUE(down.found);
    EXPECT_NEAR(down.frequency / 7, 1, 1e-8);
    EXPECT_FALSE(analysis::firstFall(level, 1000, 10e3, -20).found);
}

TEST(Crossing, TheFirstOfSeveralFallsCounts) {
    // Ripple in log f: falls through -1 at a quarter of each decade beyond 1 kHz.
    const auto ripple = [](double f) { return -2 * std::sin(2 * std::numbers::pi * std::log10(f / 1000)); };
    const auto fall = analysis::firstFall(ripple, 1000, 1e6, -1);
    ASSERT_TRUE(fall.found);
    EXPECT_NEAR(std::log10(fall.frequency / 1000), 1.0 / 12, 1e-8);
}

TEST(Crossing, FirstMaximumOfABump) {
    const auto bump = [](double f) {
        const double x = std::log10(f / 40e3);
        return 3 * std::exp(-x * x / 0.02) + 5 * std::exp(-(x - 0.8) * (x - 0.8) / 0.02);
    };
    const auto peak = analysis::firstMaximum(bump, 3000, 1e6, 1e-3);
    ASSERT_TRUE(peak.found);
    EXPECT_NEAR(peak.frequency / 40e3, 1, 1e-6);  // not the higher one beyond
    EXPECT_FALSE(analysis::firstMaximum([](double f) { return -std::log10(f); }, 3000, 1e6, 1e-3).found);
    EXPECT_FALSE(analysis::firstMaximum([](double f) { return std::log10(f); }, 3000, 1e6, 1e-3).found);
}

// The brief's size is held against the whole unit, either way round.
TEST(OuterSize, IsMarkedWhereTheBriefHasNoRoom) {
    auto d = small::transformer();
    const auto sides = [&] {
        const auto a = analysis::answer(d, small::shop());
        return std::array{*a->figure("outer_length"), *a->figure("outer_width"), *a->figure("outer_height")};
    };
    const auto free = sides();
    for (const auto& side : free) EXPECT_TRUE(side.valid && side.value > 0 && side.unit == "m") << side.name;
    EXPECT_GE(free[0].value, free[1].value);
    d.brief.size.length = free[1].value;  // turned
    d.brief.size.width = free[0].value;
    d.brief.size.height = free[2].value;
    for (const auto& side : sides()) EXPECT_TRUE(side.valid) << side.why;
    d.brief.size.height = 0.9 * free[2].value;
    const auto tight = sides();
    EXPECT_TRUE(tight[0].valid && tight[1].valid);
    EXPECT_FALSE(tight[2].valid);
    EXPECT_TRUE(tight[2].why.starts_with("the brief allows ")) << tight[2].why;
    EXPECT_EQ(tight[2].value, free[2].value);
}

}  // namespace promise_test
