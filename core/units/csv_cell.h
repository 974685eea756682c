// SPDX-License-Identifier: GPL-3.0-or-later
// One cell of a table of comma-separated text.
#pragma once

#include <string>

namespace units {

/// Text, in quotes where it has a comma, quote or line break (RFC 4180); behind an apostrophe where a spreadsheet would
/// take it for a formula.
[[nodiscard]] std::string csvCell(const std::string& text);
/// A number with nine digits; nothing when it is not finite.
[[nodiscard]] std::string csvCell(double value);

}  // namespace units
