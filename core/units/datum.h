// SPDX-License-Identifier: GPL-3.0-or-later
// A number of the catalog: what it is, who says so, and whether it is promised.
#pragma once

#include <string>

namespace units {

/// A catalog number in SI units with its source and standing.
struct Datum {
    double value = 0;
    std::string source;       ///< a key into the file's list of sources, or the source itself
    bool guaranteed = false;  ///< true: a limit that the standard guarantees; false: typical

    Datum() = default;
    Datum(double number) : value(number) {}             // NOLINT: inline parts may give the bare number
    operator double() const noexcept { return value; }  // NOLINT
    bool operator==(const Datum&) const = default;
};

}  // namespace units
