// SPDX-License-Identifier: GPL-3.0-or-later
// Quantiles of the distributions that samples of a normal one have.
#pragma once

namespace measured {

/// Share of a chi-squared variable of `freedom` > 0 below x: the regularised incomplete gamma function P(freedom/2,
/// x/2), by its series below freedom/2 + 1 and by its continued fraction above (M. Abramowitz and I. Stegun, Handbook
/// of Mathematical Functions, 6.5.29 and 6.5.31, from memory).
[[nodiscard]] double chiSquaredProbability(double x, double freedom) noexcept;
/// x below which the share p lies, 0 < p < 1; by halving, to rounding.
[[nodiscard]] double chiSquaredQuantile(double p, double freedom) noexcept;

/// Share of Student's t below x: the regularised incomplete beta function by its continued fraction (the same, 26.5.8
/// and 26.7.1, from memory).
[[nodiscard]] double studentProbability(double x, double freedom) noexcept;
[[nodiscard]] double studentQuantile(double p, double freedom) noexcept;

}  // namespace measured
