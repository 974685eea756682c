// SPDX-License-Identifier: GPL-3.0-or-later
// Logarithmic potential between rectangles in free space before an iron plane.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "coil/coil_build.h"

namespace field {

/// Mean of ln r between a point of one rectangle and a point of the other (also for a rectangle with itself), in closed
/// form: the fourfold integral of ln r is a sum over the 16 distances of edges of
///
///     Phi(u, v) = -1/24 [ (u^4 - 6 u^2 v^2 + v^4) ln r - 4 u^3 v atan(v/u) - 4 u v^3 atan(u/v) ] - 25/48 u^2 v^2,
///
/// whose derivative d4/du2 dv2 is ln r (derived here; quadrature in the test).
[[nodiscard]] double meanLogDistance(const coil::Box& a, const coil::Box& b);

/// M'_ij / mu0 of rectangles with unit current each before an iron plane at x = 0 (images of equal sign), free space
/// beyond: -1/(2 pi) (<ln r> + <ln r_image>), r in units of `scale`. Shape n x n; the unit only adds a constant.
[[nodiscard]] Eigen::MatrixXd imageMatrix(const std::vector<coil::Box>& boxes, double scale);

}  // namespace field
