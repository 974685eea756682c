// SPDX-License-Identifier: GPL-3.0-or-later
// What each part of a design does to what is promised, as a study found it.
#pragma once

#include <QString>

#include "bench/spread_study.h"
#include "document/selection.h"

namespace bench {

/// The part of the design that a varying number belongs to; nothing where it is none that can be selected.
[[nodiscard]] document::Selected partOf(const spread::Varying& varying, const design::Design& design);

/// What one standard deviation of a number does to a column, with its derivative, in one sentence: "joint gap, one
/// standard deviation more: −3 dB low (normal) +0.4 Hz; 0.2 MHz a metre …".
[[nodiscard]] QString slopeWords(const SpreadFound& found, std::size_t column, const spread::Slope& slope);

/// What a part does to each promise: the numbers of it that move one most, a line each, at most so many. "" where there
/// are no slopes or nothing of it varies.
[[nodiscard]] QString effectsOf(const SpreadFound& found, const document::Selected& part, int lines = 4);

}  // namespace bench
