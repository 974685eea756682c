// SPDX-License-Identifier: GPL-3.0-or-later
// Length of a turn round a rectangular tongue.
#pragma once

namespace coil {

/// Length of one turn at distance `x` from the tongue's surface, m:
///
///     l = 2 (tongue + stack) + 8 b - 8 rho + 2 pi (rho + x - b),   b = wall + clearance
///
/// straight sides of the bobbin plus quarter arcs round corners of radius rho (rho = 0: 2 (w_t + s) + 8 b + 2 pi (x -
/// b)). Geometry; check rows G-M1..3 (McLyman, Transformer and Inductor Design Handbook, prints the same form: from
/// memory). Valid for x >= b; no bulge on the long sides (real coils: 5-15 % on build, common practice, no source).
[[nodiscard]] double turnLength(double tongue, double stack, double wallAndClearance, double cornerRadius,
                                double x) noexcept;

}  // namespace coil
