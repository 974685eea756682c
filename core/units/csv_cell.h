// SPDX-License-Identifier: GPL-3.0-or-later
// Cells of a table of comma-separated text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace units {

/// Text, in quotes where it has a comma, quote or line break (RFC 4180); behind an apostrophe where a spreadsheet would
/// take it for a formula.
[[nodiscard]] std::string csvCell(const std::string& text);
/// A number with nine digits; nothing when it is not finite.
[[nodiscard]] std::string csvCell(double value);

/// The cells of a line, without blanks around them; text in quotes may hold the delimiter, a doubled quote is one
/// (RFC 4180, but a row is a line). A delimiter ' ' stands for any run of blanks and tabs.
[[nodiscard]] std::vector<std::string> csvCells(std::string_view line, char delimiter = ',');
/// Lines without their ends; CR, LF and both end a line; a mark of UTF-8 in front is left out.
[[nodiscard]] std::vector<std::string_view> csvLines(std::string_view text);

/// The number in a cell, with the decimal sign given; nothing if it is none. There is no grouping sign. Not finite only
/// if the cell says so.
[[nodiscard]] std::optional<double> csvNumber(std::string_view cell, bool decimalComma = false);
/// An empty cell, or one that stands for no value: NaN, inf, ---, n/a.
[[nodiscard]] bool csvIsMissing(std::string_view cell);

}  // namespace units
