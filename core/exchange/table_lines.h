// SPDX-License-Identifier: GPL-3.0-or-later
// Rows and columns of a table whose delimiter and decimal sign are not known beforehand.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/measured_table.h"

namespace exchange::detail {

/// Empty, or of blanks alone.
[[nodiscard]] bool isBlankLine(std::string_view line) noexcept;
/// Begins with # ! % * or /.
[[nodiscard]] bool isRemark(std::string_view line) noexcept;

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
