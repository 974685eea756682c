// SPDX-License-Identifier: GPL-3.0-or-later
// The wires between a coil and its terminals.
#pragma once

#include <vector>

#include "coil/coil_build.h"

namespace coil {

/// Flexible leads: seven wires of 0.1 mm; leads of one winding side by side 5 mm apart (common practice, no source).
inline constexpr double flexibleLeadArea = 7 * 0.00785398e-6, leadSpacing = 5e-3;
/// A lead's capacitance to core and surroundings, F/m: 10 pF a metre (common practice, no source).
inline constexpr double leadCapacitance = 10e-12;

/// Lead-outs of a design laid out, one per winding and terminal that it reaches (start, finish, taps, ends of
/// sections). A flexible lead is as long as the terminal says, of the flexible wire or of the winding's own conductor
/// where that is thicker; to a pin the winding's own conductor runs along the flange: outward from its layer to the
/// window's edge, sideways to the pin, and across the coil where the pin stands at the other flange. Where both say
/// nothing there is none.
[[nodiscard]] std::vector<LeadOut> leadOuts(const design::Design& design, const catalog::Catalog& shop,
                                            const CoilBuild& build);

/// Inductance of a straight round wire of length l and radius r, its inside included, H:
///
///     L = mu0 l / 2 pi [ asinh(l/r) - sqrt(1 + (r/l)^2) + r/l + 1/4 ]  ->  mu0 l / 2 pi [ ln(2 l/r) - 3/4 ]
///
/// E. B. Rosa, The self and mutual inductances of linear conductors, Bulletin of the Bureau of Standards 4 (1908) (from
/// memory; Neumann's integral).
[[nodiscard]] double straightWireInductance(double length, double radius) noexcept;

/// Mutual inductance of two straight parallel wires of length l at distance d, side by side, H:
///
///     M = mu0 l / 2 pi [ asinh(l/d) - sqrt(1 + (d/l)^2) + d/l ]         (Rosa 1908, from memory; Neumann's integral)
[[nodiscard]] double parallelWiresInductance(double length, double distance) noexcept;

}  // namespace coil
