// SPDX-License-Identifier: GPL-3.0-or-later
// What a run says, in words.
#pragma once

#include <string>
#include <vector>

#include "spread/sensitivity.h"
#include "spread/summary.h"

namespace spread {

/// "−3 dB low (normal): at most 20 Hz", a mask's with ", margin" behind; a figure that is not promised by its name.
[[nodiscard]] std::string columnWords(const analysis::Column& column);
/// A value of the column with its unit; "none" where it does not occur.
[[nodiscard]] std::string valueWords(const analysis::Column& column, double value);
/// A difference of two: levels with digits of their own, since a hundredth of a decibel is too coarse for it.
[[nodiscard]] std::string differenceWords(const analysis::Column& column, double value);
/// "97.3 %", "99.95 %".
[[nodiscard]] std::string percentWords(double share);
/// "97.3 % kept (95 % interval 96.1 % to 98.1 %)", "not judged".
[[nodiscard]] std::string yieldWords(const Yield& yield);
/// "99 % of all units above 18.2 kHz with 95 % confidence; measured to 0.18 kHz either way", or why there are none.
[[nodiscard]] std::string limitsWords(const analysis::Column& column, const Limits& limits);
/// Causes of at least that share of the variance, greatest first, as indices.
[[nodiscard]] std::vector<std::size_t> rankedCauses(const VarianceShares& shares, double least);
/// How a number varies, and who says so: "joint gap: 4 µm, lognormal, ± 50 %, 30 % of its variance by lot; common
/// practice, no source". The place of the number in the design stands behind.
[[nodiscard]] std::string varyingWords(const Varying& varying);

}  // namespace spread
