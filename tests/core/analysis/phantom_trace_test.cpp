// SPDX-License-Identifier: GPL-3.0-or-later
// The output's kick when a phantom supply is switched on, against a circuit small enough for the hand.
#include <gtest/gtest.h>

#include <cmath>

#include "small_figure.h"

namespace phantom_trace_test {

constexpr double source = 600, feed = 6810, current = 0.01;

design::Design fedUnit(double mismatch) {
    auto d = small::transformer();
    auto& hookUp = d.hookUps.front();
    hookUp.earths = {"4", "core"};
    hookUp.ports[0].earthing = design::Earthing::Balanced;
    hookUp.ports[0].through->resistance = source;
    hookUp.ports[1].through->resistance = 1e9;
    d.conditions.phantom.emplace();
    d.conditions.phantom->port = "input";
    d.conditions.phantom->mismatch = mismatch;
    d.conditions.phantom->current = current;
    return d;
}

std::shared_ptr<const analysis::Trace> traceOf(const design::Design& d) {
    return analysis::answer(d, small::shop(), {}, {}, {"", {1e3}, false})->sharedTrace("phantom_on");
}

double at(const analysis::Trace& trace, const char* curve, double time) {
    const auto after = std::lower_bound(trace.frequency.begin(), trace.frequency.end(), time);
    return trace.curve(curve)->y[static_cast<std::size_t>(after - trace.frequency.begin())];
}

TEST(PhantomSwitchedOn, NoSupplyNoTrace) {
    auto d = fedUnit(0);
    d.conditions.phantom.reset();
    EXPECT_EQ(traceOf(d), nullptr);
}

TEST(PhantomSwitchedOn, BeginsWithTheDividedDifferenceOfTheDropsAndDiesAway) {
    // Ohm: the drops R I / 2 differ by R m I / 2; source and both feeds divide that; the secondary has twice the turns.
    const double mismatch = 0.02, drop = feed * mismatch * current / 2;
    const auto trace = traceOf(fedUnit(mismatch)), equal = traceOf(fedUnit(0));
    ASSERT_NE(trace, nullptr);
    ASSERT_NE(equal, nullptr);
    // Both ways of mismatch with what unequal capacitances make of the supply itself taken off.
    const auto differential = [&](const char* curve, double time) {
        return at(*trace, curve, time) - at(*equal, "output", time);
    };
    const double expected = 2 * drop * source / (source + 2 * feed), early = 2e-5;  // before the core lets go
    EXPECT_NEAR(std::abs(differential("output", early)) / expected, 1, 0.05);
    EXPECT_NEAR(differential("output_swapped", early) / differential("output", early), -1, 0.02);
    // L/R of some henries over 575 ohm: gone within a second.
    EXPECT_LT(std::abs(differential("output", 0.9)), 0.05 * expected);
}

TEST(PhantomSwitchedOn, GoesWithTheMismatch) {
    const auto none = traceOf(fedUnit(0)), once = traceOf(fedUnit(0.01)), twice = traceOf(fedUnit(0.02));
    const double base = at(*none, "output", 1e-3);
    EXPECT_NEAR((at(*twice, "output", 1e-3) - base) / (at(*once, "output", 1e-3) - base), 2, 0.01);
}

}  // namespace phantom_trace_test
