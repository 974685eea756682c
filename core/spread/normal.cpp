// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/normal.h"

#include <cmath>
#include <numbers>

namespace spread {

namespace {

/// x > 0 above which the share `tail` <= 1/2 lies.
double upperQuantile(double tail) noexcept {
    const double t = std::sqrt(-2 * std::log(tail));
    double x = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    constexpr int steps = 2;  // third order: 4.5e-4, 1e-10, rounding
    for (int k = 0; k < steps; ++k) {
        const double excess = std::erfc(x / std::numbers::sqrt2) / 2 - tail;
        const double newton = excess * std::sqrt(2 * std::numbers::pi) * std::exp(x * x / 2);
        x += newton / (1 - x * newton / 2);
    }
    return x;
}

}  // namespace

double normalProbability(double x) noexcept {
    return std::erfc(-x / std::numbers::sqrt2) / 2;
}

double normalQuantile(double p) noexcept {
    return p < 0.5 ? -upperQuantile(p) : upperQuantile(1 - p);
}

}  // namespace spread
