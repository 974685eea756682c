// SPDX-License-Identifier: GPL-3.0-or-later
// How hard wire may be pulled while it is wound.
#pragma once

#include <numbers>

namespace coil {

/// What annealed copper yields at, Pa: 10 000 psi (from memory). A published tension chart for winding wire, AWG 22 to
/// 43, read, gives 68 to 71 MPa in the bare copper as the greatest tension and advises 50 to 80 % of that.
inline constexpr double copperYield = 69e6;
/// Share of the yield to wind with: the middle of what the chart advises.
inline constexpr double windingShare = 0.65;
inline constexpr double windingStress = windingShare * copperYield;  ///< Pa

/// Tension to wind with, N, for `strands` wires of `bareDiameter`, m: stress x area of the bare copper.
[[nodiscard]] constexpr double windingTension(double bareDiameter, int strands) noexcept {
    return windingStress * std::numbers::pi / 4 * bareDiameter * bareDiameter * strands;
}

}  // namespace coil
