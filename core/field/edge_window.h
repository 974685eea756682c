// SPDX-License-Identifier: GPL-3.0-or-later
// What the ends of layers and shields face: yokes through the flanges, and the next chamber through a middle flange.
#pragma once

#include "field/coil_scene.h"

namespace field {

/// Capacitance of the bend between a right-angled convex corner and the concave corner round it, beyond straight plates
/// that end at the convex corner, per metre and permittivity, for gaps a and b:
///
///     2/pi [ (a/b) atan(b/a) + (b/a) atan(a/b) + ln((a^2 + b^2) / (4 a b)) ]
///
/// Derived here by a Schwarz-Christoffel map of the bent channel; a = b gives 1 - (2/pi) ln 2 = 0.5587.
[[nodiscard]] double cornerFringe(double a, double b);

/// Adds the facings of ends. Each is concentrated on one axial position: y0 = y1, `total` at the potential that a body
/// has there (bodies that do not reach it: at their nearer end).
void addEndFacings(Scene& scene, std::vector<Facing>& facings);

}  // namespace field
