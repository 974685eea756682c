// SPDX-License-Identifier: GPL-3.0-or-later
// Partial fractions of functions that are known in closed form, and their exact steps in time.
#include "analysis/rational_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/answer.h"

namespace rational_fit_test {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;

template <class... Functions>
analysis::PartialFractions fitted(int order, const Functions&... functions) {
    const std::vector<double> frequencies = analysis::logarithmicGrid(1, 300e3, 120);
    std::vector<std::vector<Complex>> values;
    const auto add = [&](const auto& function) {
        values.emplace_back();
        for (const double f : frequencies) values.back().push_back(function(Complex(0, 2 * pi * f)));
    };
    (add(functions), ...);
    return analysis::partialFractions(frequencies, values, order);
}

void expectStable(const analysis::PartialFractions& fit) {
    for (const Complex& pole : fit.poles) {
        EXPECT_LT(pole.real(), 0);
        EXPECT_GE(pole.imag(), 0);
    }
}

TEST(PartialFractions, FindARealPoleAndAResonanceInCommon) {
    const double slow = 2 * pi * 7, w = 2 * pi * 40e3;
    const auto one = [&](Complex s) { return slow / (s + slow); };
    const auto two = [&](Complex s) { return one(s) + 3.0 * w * w / (s * s + 0.1 * w * s + w * w); };
    const auto fit = fitted(4, one, two);
    EXPECT_LT(fit.error, 1e-6);
    expectStable(fit);
    for (const double f : {3.0, 500.0, 39e3, 120e3}) {
        const Complex s(0, 2 * pi * f);
        EXPECT_LT(std::abs(fit.at(0, f) - one(s)), 1e-6);
        EXPECT_LT(std::abs(fit.at(1, f) - two(s)), 1e-5);
    }
}

/// The eddy field of sheets has no poles of its own in common with any sum: many relaxations come near.
TEST(PartialFractions, ComeNearASquareRoot) {
    const auto fit = fitted(24, [](Complex s) { return 1.0 / (1.0 + std::sqrt(s / 3e3)); });
    EXPECT_LT(fit.error, 2e-3);
    expectStable(fit);
}

/// y' = p y + x by a thousand small midpoint steps.
TEST(StraightStep, IsWhatSmallStepsAddUpTo) {
    constexpr int pieces = 20000;
    const double step = 1e-3, x0 = 2, x1 = -1;
    for (const Complex pole : {Complex(-1, 0), Complex(-300, 900), Complex(-999, 0), Complex(-1001, 0),
                               Complex(-9000, 4000), Complex(-2e4, 0)}) {
        const analysis::StraightStep s(pole, step);
        const Complex y0(0.3, -0.2);
        Complex y = y0, gathered = 0;
        const double h = step / pieces;
        for (int n = 0; n < pieces; ++n) {
            const double x = x0 + (x1 - x0) * (n + 0.5) / pieces;
            const Complex next = ((1.0 + pole * h / 2.0) * y + h * x) / (1.0 - pole * h / 2.0);
            gathered += h / 2 * (y + next);
            y = next;
        }
        EXPECT_LT(std::abs(s.stay * y0 + s.start * x0 + s.end * x1 - y), 1e-6 * std::abs(y) + 1e-9) << pole;
        EXPECT_LT(std::abs(s.gathered * y0 + s.gatheredStart * x0 + s.gatheredEnd * x1 - gathered),
                  1e-6 * std::abs(gathered) + 1e-12)
            << pole;
    }
}

}  // namespace rational_fit_test
