// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/table_lines.h"

#include <algorithm>
#include <array>
#include <charconv>
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
        if (const auto value = cellNumber(cell, decimalComma); value && std::isfinite(*value))
            ++numbers;
        else if (!isMissing(cell))
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

std::vector<std::string_view> tableLines(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const auto end = std::min(text.find_first_of("\r\n"), text.size());
        lines.push_back(text.substr(0, end));
        const bool both = end + 1 < text.size() && text[end] == '\r' && text[end + 1] == '\n';
        text.remove_prefix(std::min(end + (both ? 2 : 1), text.size()));
    }
    return lines;
}

bool isBlankLine(std::string_view line) noexcept {
    return line.find_first_not_of(" \t") == std::string_view::npos;
}

bool isRemark(std::string_view line) noexcept {
    const auto first = line.find_first_not_of(" \t");
    return first != std::string_view::npos && std::string_view("#!%*/").find(line[first]) != std::string_view::npos;
}

std::optional<double> cellNumber(std::string_view cell, bool decimalComma) {
    std::string text(cell);
    if (decimalComma) {
        if (text.find('.') != std::string::npos) return {};
        std::replace(text.begin(), text.end(), ',', '.');
    }
    std::string_view digits = text;
    if (digits.starts_with('+')) digits.remove_prefix(1);
    if (digits.starts_with('+')) return {};
    double value = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (digits.empty() || read.ec != std::errc() || read.ptr != digits.data() + digits.size()) return {};
    return value;
}

bool isMissing(std::string_view cell) {
    std::string small;
    for (const char c : cell) small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    constexpr std::array<std::string_view, 14> words{"",     "nan", "-nan", "inf", "-inf", "+inf", "---",
                                                     "-",    "--",  "n/a",  "na",  "ovl",  "infinity", "-infinity"};
    return std::find(words.begin(), words.end(), small) != words.end();
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
