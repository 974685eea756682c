// SPDX-License-Identifier: GPL-3.0-or-later
// One computed number with everything a reader may ask about it.
#pragma once

#include <string>
#include <vector>

namespace units {

/// A computed number: `name` as in "quantity[.winding[.winding]][@hook-up]".
struct Figure {
    std::string name;
    double value = 0;
    std::string unit;  ///< ASCII SI: ohm H F Hz s m dB dBu; "" for a pure number
    double uncertainty =
        0;               ///< relative half width (for dB and dBu: absolute, in dB) that the method and materials allow
    std::string source;  ///< the formula and where it is published
    bool valid = true;   ///< false: outside the validity of a formula it rests on
    std::string why;     ///< why it is not valid, or what it assumes
    std::string hookUp;  ///< "" where no hook-up matters
    std::vector<std::string> ports;
    bool operator==(const Figure&) const = default;
};

/// A figure's name taken apart, its hook-up left out: "leakage_10kHz", "P", "S".
[[nodiscard]] std::vector<std::string> nameParts(const std::string& figure);
/// As a table may have it, with blanks for dots, made what figures are called: "dcr.P" of "dcr P".
[[nodiscard]] std::string dotted(std::string name);

}  // namespace units
