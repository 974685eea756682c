// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/table_lines.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "units/csv_cell.h"

namespace exchange::detail {

namespace {

/// Whether a line is a row under these signs: two cells or more, two numbers at least, the rest missing at most.
bool isRow(std::string_view line, char delimiter, bool decimalComma) {
    if (isBlankLine(line) || isRemark(line)) return false;
    std::size_t numbers = 0, cells = 0;
    for (const std::string& cell : units::csvCells(line, delimiter)) {
        ++cells;
        if (const auto value = units::csvNumber(cell, decimalComma); value && std::isfinite(*value))
            ++numbers;
        else if (!units::csvIsMissing(cell))
            return false;
    }
    return cells >= 2 && numbers >= 2;
}

TableShape shaped(const std::vector<std::string_view>& lines, char delimiter, bool decimalComma) {
    TableShape shape{delimiter, decimalComma, lines.size(), 0, 0};
    // As many lines decide as make a guess sure; the whole table is read once it is known how.
    constexpr std::size_t enough = 2000;
    for (std::size_t k = 0; k < lines.size() && shape.rows < enough; ++k) {
        if (!isRow(lines[k], delimiter, decimalComma)) continue;
        if (shape.rows++ > 0) continue;
        shape.firstRow = k;
        shape.columns = units::csvCells(lines[k], delimiter).size();
    }
    return shape;
}

}  // namespace

bool isBlankLine(std::string_view line) noexcept {
    return line.find_first_not_of(" \t") == std::string_view::npos;
}

bool isRemark(std::string_view line) noexcept {
    const auto first = line.find_first_not_of(" \t");
    return first != std::string_view::npos && std::string_view("#!%*/").find(line[first]) != std::string_view::npos;
}

TableShape tableShape(const std::vector<std::string_view>& lines) {
    // Where two fit as many lines the earlier wins: a tab or semicolon is never part of a number.
    constexpr std::array<std::pair<char, bool>, 7> shapes{
        {{'\t', false}, {'\t', true}, {';', false}, {';', true}, {',', false}, {' ', false}, {' ', true}}};
    TableShape best;
    for (const auto& [delimiter, decimalComma] : shapes)
        if (const TableShape shape = shaped(lines, delimiter, decimalComma); shape.rows > best.rows) best = shape;
    return best;
}

}  // namespace exchange::detail
