// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/csv_cell.h"

#include <cmath>

#include "units/text.h"

namespace units {

std::string csvCell(const std::string& text) {
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

}  // namespace units
