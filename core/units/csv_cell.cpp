// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/csv_cell.h"

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

}  // namespace units
