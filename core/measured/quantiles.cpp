// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/quantiles.h"

#include <cmath>
#include <limits>
#include <utility>

namespace measured {

namespace {

constexpr double rounding = std::numeric_limits<double>::epsilon();
constexpr double tiny = 1e-300;  // keeps the continued fractions from a division by 0
constexpr int mostTerms = 100000;

double gammaSeries(double a, double x) noexcept {
    double term = 1 / a, sum = term;
    for (int n = 1; n < mostTerms && std::abs(term) > std::abs(sum) * rounding; ++n) {
        term *= x / (a + n);
        sum += term;
    }
    return sum * std::exp(-x + a * std::log(x) - std::lgamma(a));
}

/// Upper share, by Lentz's evaluation of the continued fraction.
double gammaFraction(double a, double x) noexcept {
    double b = x + 1 - a, c = 1 / tiny, d = 1 / b, value = d;
    for (int n = 1; n < mostTerms; ++n) {
        const double an = -n * (n - a);
        b += 2;
        d = an * d + b;
        d = 1 / (std::abs(d) < tiny ? tiny : d);
        c = b + an / c;
        if (std::abs(c) < tiny) c = tiny;
        value *= d * c;
        if (std::abs(d * c - 1) < rounding) break;
    }
    return value * std::exp(-x + a * std::log(x) - std::lgamma(a));
}

double betaFraction(double a, double b, double x) noexcept {
    double c = 1, d = 1 - (a + b) * x / (a + 1);
    d = 1 / (std::abs(d) < tiny ? tiny : d);
    double value = d;
    for (int m = 1; m < mostTerms; ++m) {
        double change = 1;
        for (const double an : {m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
                                -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))}) {
            d = 1 + an * d;
            d = 1 / (std::abs(d) < tiny ? tiny : d);
            c = 1 + an / c;
            if (std::abs(c) < tiny) c = tiny;
            change = d * c;
            value *= change;
        }
        if (std::abs(change - 1) < rounding) break;
    }
    return value;
}

/// Regularised incomplete beta function.
double betaShare(double a, double b, double x) noexcept {
    if (x <= 0) return 0;
    if (x >= 1) return 1;
    const double front =
        std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) + a * std::log(x) + b * std::log1p(-x));
    if (x < (a + 1) / (a + b + 2)) return front * betaFraction(a, b, x) / a;
    return 1 - front * betaFraction(b, a, 1 - x) / b;
}

/// The x of a rising function between two places, by halving until they are neighbours.
template <class Function>
double halved(double low, double high, double p, const Function& share) noexcept {
    while (true) {
        const double middle = low + (high - low) / 2;
        if (!(low < middle && middle < high)) return middle;
        (share(middle) < p ? low : high) = middle;
    }
}

}  // namespace

double chiSquaredProbability(double x, double freedom) noexcept {
    if (!(x > 0)) return 0;
    const double a = freedom / 2, half = x / 2;
    return half < a + 1 ? gammaSeries(a, half) : 1 - gammaFraction(a, half);
}

double chiSquaredQuantile(double p, double freedom) noexcept {
    double high = freedom + 10;
    while (chiSquaredProbability(high, freedom) < p) high *= 2;
    return halved(0, high, p, [&](double x) { return chiSquaredProbability(x, freedom); });
}

double studentProbability(double x, double freedom) noexcept {
    const double tail = betaShare(freedom / 2, 0.5, freedom / (freedom + x * x)) / 2;
    return x > 0 ? 1 - tail : tail;
}

double studentQuantile(double p, double freedom) noexcept {
    if (p < 0.5) return -studentQuantile(1 - p, freedom);
    double high = 10;
    while (studentProbability(high, freedom) < p) high *= 2;
    return halved(0, high, p, [&](double x) { return studentProbability(x, freedom); });
}

}  // namespace measured
