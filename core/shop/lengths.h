// SPDX-License-Identifier: GPL-3.0-or-later
// Lengths as a paper prints them, in millimetres or in inches.
#pragma once

#include <string>

namespace shop {

/// All lengths are given in m. An inch is `units::millimetresPerInch`, a mil a thousandth of it.
struct Lengths {
    bool inch = false;
    bool operator==(const Lengths&) const = default;

    /// "21.5 mm" with `decimals` digits; in inches as fine: "0.846 in".
    [[nodiscard]] std::string size(double metres, int decimals = 1) const;
    /// The same; in inches with the millimetres behind: "0.0049 in (0.125 mm)".
    [[nodiscard]] std::string both(double metres, int decimals = 1) const;
    /// A thickness: "25 µm", "0.98 mil".
    [[nodiscard]] std::string thin(double metres) const;
    /// A length to cut: the next whole "180 mm", the next "7.10 in" in steps of 0.05 in.
    [[nodiscard]] std::string cut(double metres) const;
    /// With no more digits than it has: "0.1 mm", "0.0039 in".
    [[nodiscard]] std::string exact(double metres) const;
    /// The figure of a dimension without its unit: "21.5", "0.846".
    [[nodiscard]] std::string figure(double metres) const;
    /// A field strength in insulation, given in V/m: "4.2 kV/mm", "106 V/mil (4.2 kV/mm)".
    [[nodiscard]] std::string stress(double field) const;
    [[nodiscard]] const char* unit() const noexcept { return inch ? "in" : "mm"; }
};

}  // namespace shop
