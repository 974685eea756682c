// SPDX-License-Identifier: GPL-3.0-or-later
// A trace as comma-separated text: the command line and the plots' own menu write the same.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace plots {

/// First line "frequency_Hz" and the curves' names; then one line a frequency. A value that is not finite is left
/// empty. Text with a comma, quote or line break stands in quotes.
[[nodiscard]] std::string traceCsv(const analysis::Trace& trace);

/// One cell of a CSV file: a number with nine digits (nothing when it is not finite), or text, quoted where it must be.
[[nodiscard]] std::string csvCell(double value);
[[nodiscard]] std::string csvCell(const std::string& text);

}  // namespace plots
