// SPDX-License-Identifier: GPL-3.0-or-later
// How a design stands to its brief.
#pragma once

#include "analysis/answer.h"

namespace analysis {

/// States of all promises and masks, broken first, then thin, kept, not computed. Thin: margin below a tenth of the
/// limit, or below 0.5 dB where the figure is in dB or dBu (a rule of our own).
[[nodiscard]] std::vector<PromiseState> promiseStates(const design::Design& design, const Answer& answer);
/// The same in the brief's order, its masks behind.
[[nodiscard]] std::vector<PromiseState> statesInOrder(const design::Design& design, const Answer& answer);

/// What a margin is judged by: itself in dB or dBu, else its share of the limit (itself where that is 0).
[[nodiscard]] double marginShare(units::Kind kind, double margin, double limit) noexcept;
/// A kept promise is thin below this `marginShare`.
[[nodiscard]] double thinBelow(units::Kind kind) noexcept;
/// A mask's limit at f, between its corners on a logarithmic axis; nothing where either corner has none.
[[nodiscard]] std::optional<double> maskLimit(const design::Mask& mask, double f, bool low);

}  // namespace analysis
