// SPDX-License-Identifier: GPL-3.0-or-later
// Lines and numbers of a table whose delimiter and decimal sign are not known beforehand.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/measured_table.h"

namespace exchange::detail {

/// Lines without their ends; CR, LF and both end a line.
[[nodiscard]] std::vector<std::string_view> tableLines(std::string_view text);
/// Empty, or of blanks alone.
[[nodiscard]] bool isBlankLine(std::string_view line) noexcept;
/// Begins with # ! % * or /.
[[nodiscard]] bool isRemark(std::string_view line) noexcept;

/// The number in a cell, with the decimal sign given; nothing if it is none. Not finite only if the cell says so.
[[nodiscard]] std::optional<double> cellNumber(std::string_view cell, bool decimalComma);
/// An empty cell, or one that stands for no value: NaN, inf, ---, n/a.
[[nodiscard]] bool isMissing(std::string_view cell);

/// How the rows are written, and the line of the first one.
struct TableShape {
    char delimiter = ',';
    bool decimalComma = false;
    std::size_t firstRow = 0;
    std::size_t rows = 0;     ///< lines that are all numbers
    std::size_t columns = 0;  ///< of the first row
};
[[nodiscard]] TableShape tableShape(const std::vector<std::string_view>& lines);

/// The names above the first row, a column each; "column 2" where there is none. A line of units below the names is
/// put behind them in brackets.
[[nodiscard]] std::vector<std::string> columnNames(const std::vector<std::string_view>& lines, const Picking& picking);

}  // namespace exchange::detail
