// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/csv_cell.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "units/text.h"

namespace units {

namespace {

/// What a spreadsheet would compute instead of showing it.
bool isFormula(const std::string& text) {
    const bool sign = text.starts_with('+') || text.starts_with('-');
    return text.starts_with('=') || text.starts_with('@') || (sign && text.find_first_of("(|!") != std::string::npos);
}

}  // namespace

std::string csvCell(const std::string& text) {
    if (isFormula(text)) return csvCell("'" + text);
    if (text.find_first_of(",\"\n\r") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string csvCell(double value) {
    if (value == 0) return "0";
    return std::isfinite(value) ? significant(value, 9) : std::string();
}

namespace {

constexpr const char* blanks = " \t\r";

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Where the cell that begins `line` ends.
std::size_t cellEnd(std::string_view line, char delimiter) {
    bool quoted = false;
    for (std::size_t k = 0; k < line.size(); ++k) {
        if (line[k] == '"') quoted = !quoted;
        if (!quoted && (line[k] == delimiter || (delimiter == ' ' && line[k] == '\t'))) return k;
    }
    return line.size();
}

std::string unquoted(std::string_view cell) {
    if (cell.size() < 2 || cell.front() != '"' || cell.back() != '"') return std::string(cell);
    std::string text;
    cell = cell.substr(1, cell.size() - 2);
    for (std::size_t k = 0; k < cell.size(); ++k) {
        text += cell[k];
        if (cell[k] == '"' && k + 1 < cell.size() && cell[k + 1] == '"') ++k;
    }
    return text;
}

}  // namespace

std::vector<std::string> csvCells(std::string_view line, char delimiter) {
    std::vector<std::string> cells;
    if (delimiter == ' ') line = trimmed(line);
    while (true) {
        const std::size_t end = cellEnd(line, delimiter);
        cells.push_back(unquoted(trimmed(line.substr(0, end))));
        if (end == line.size()) return cells;
        line.remove_prefix(end + 1);
        if (delimiter == ' ') line = trimmed(line);
    }
}

std::vector<std::string_view> csvLines(std::string_view text) {
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

std::optional<double> csvNumber(std::string_view cell, bool decimalComma) {
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

bool csvIsMissing(std::string_view cell) {
    std::string small;
    for (const char c : cell) small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    constexpr std::array<std::string_view, 14> words{"",  "nan", "-nan", "inf", "-inf", "+inf",     "---",
                                                     "-", "--",  "n/a",  "na",  "ovl",  "infinity", "-infinity"};
    return std::find(words.begin(), words.end(), small) != words.end();
}

}  // namespace units
