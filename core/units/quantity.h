// SPDX-License-Identifier: GPL-3.0-or-later
// A number of a design that a person may have given a tolerance and a note.
#pragma once

#include <optional>
#include <string>

namespace units {

/// How far the true value may lie from the stated one.
struct Tolerance {
    double plusMinus = 0;  ///< half width: relative (0.05 is 5 %) or in the quantity's own unit
    bool relative = true;  ///< true: `plusMinus` is a share of the value
    std::string
        distribution;  ///< "normal" (half width is two standard deviations), "uniform", "triangular"; "" = normal
    bool operator==(const Tolerance&) const = default;
};

/// A number in SI units that reads like a double and keeps what was said about it.
struct Quantity {
    double value = 0;
    std::optional<Tolerance> tolerance;
    std::string note;

    Quantity() = default;
    Quantity(double number) : value(number) {}          // NOLINT: a plain number is the usual case
    operator double() const noexcept { return value; }  // NOLINT
    bool operator==(const Quantity&) const = default;
};

}  // namespace units
