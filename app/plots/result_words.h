// SPDX-License-Identifier: GPL-3.0-or-later
// What a result says in words: figures as text, one sentence a plot, and what changed since a trace was held.
#pragma once

#include <qcustomplot.h>

#include <QString>

#include "analysis/answer.h"

namespace plots {

/// The figure of this quantity in the hook-up that the answer shows, or null.
[[nodiscard]] const units::Figure* figureOf(const analysis::Answer& answer, std::string_view quantity);

/// Text of `units` with a true minus sign, as it is shown.
[[nodiscard]] QString shownNumber(const std::string& text);

/// A curve's value with its unit, "over 80 dB" where no more than that is known.
[[nodiscard]] QString valueText(const analysis::Curve& curve, double value);

/// A figure's value with its unit and the digits it deserves: "119 µH".
[[nodiscard]] QString written(const units::Figure& figure);

/// Its uncertainty: "± 6 %", "± 0.3 dB"; "" where there is none to tell.
[[nodiscard]] QString uncertaintyText(const units::Figure& figure);

/// "71 → 84 kHz": the unit once where it is the same.
[[nodiscard]] QString change(const QString& before, const QString& now);

/// One sentence on the shown curves of a trace, for those who do not see it: "−3 dB at 18 Hz and 92 kHz, peak +0.4 dB
/// at 61 kHz". Curves without a value anywhere: why.
[[nodiscard]] QString summary(const analysis::Answer& answer, const analysis::Trace& trace,
                              const std::vector<std::string>& curves);

/// What changed between a held answer and this one, for the given curves: "−3 dB high: 71 → 84 kHz". Figures that
/// belong to the trace come first; without any that differs, the largest distance of the curves between `from` and `to`
/// Hz.
[[nodiscard]] QString difference(const analysis::Answer& held, const analysis::Answer& now, const std::string& trace,
                                 const std::vector<std::string>& curves, const QCPRange& band);

}  // namespace plots
