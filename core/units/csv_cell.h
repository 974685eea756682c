// SPDX-License-Identifier: GPL-3.0-or-later
// Cells of a table of comma-separated text.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace units {

/// Text, in quotes where it has a comma, quote or line break (RFC 4180).
[[nodiscard]] std::string csvCell(const std::string& text);
/// A number with nine digits; nothing when it is not finite.
[[nodiscard]] std::string csvCell(double value);

/// The cells of a line, without blanks around them; text in quotes may hold the delimiter, a doubled quote is one
/// (RFC 4180, but a row is a line). A delimiter ' ' stands for any run of blanks and tabs.
[[nodiscard]] std::vector<std::string> csvCells(std::string_view line, char delimiter = ',');

}  // namespace units
