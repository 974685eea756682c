// SPDX-License-Identifier: GPL-3.0-or-later
// A lot of core sheets as it was measured in a test frame.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/alloy.h"

namespace exchange {

/// What was measured.
struct MeasuredLot {
    std::vector<catalog::BhPoint> points;  ///< peak field, peak flux density
    double coercivity = 0;                 ///< A/m, measured on the lot; 0: not
    double remanence = 0;                  ///< T, likewise
    double frequency = 0;                  ///< Hz of an alternating measurement; 0: not told
    double thickness = 0;                  ///< of a sheet, m; 0: not told
};

/// Reads a table of comma-separated values. Lines that start with # may tell "# key: number": turns, path_m,
/// section_m2, frequency_Hz, thickness_m, coercivity_A_per_m, remanence_T. Then one line of column names and eight or
/// more rows of two numbers above 0:
///
///     field_A_per_m,flux_T         peak values of loops from the demagnetised state
///     current_A,inductance_H       rms current in the frame's winding;  H = sqrt 2 N I / l, B = L H l / (N^2 A)
///     voltage_V,inductance_H       rms voltage of its winding;  B = sqrt 2 U / (2 pi f N A), H = B N^2 A / (L l)
///
/// (Ampere and Faraday, sines; the frame's joints are part of what is measured). Inductance as flux over ampere-turns
/// is exact in Rayleigh's region. The latter two need turns, path_m and section_m2, the last frequency_Hz too. Throws
/// units::BadInput with every fault.
[[nodiscard]] MeasuredLot readLot(std::string_view text, const std::string& file);

}  // namespace exchange
