// SPDX-License-Identifier: GPL-3.0-or-later
// The standard normal distribution.
#pragma once

namespace spread {

/// Share below x, by the complementary error function.
[[nodiscard]] double normalProbability(double x) noexcept;

/// x below which the share `p` lies, 0 < p < 1: a rational first guess (M. Abramowitz and I. Stegun, Handbook of
/// Mathematical Functions, 26.2.23, within 4.5e-4: from memory) made exact to rounding by Halley's steps.
[[nodiscard]] double normalQuantile(double p) noexcept;

}  // namespace spread
