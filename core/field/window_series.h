// SPDX-License-Identifier: GPL-3.0-or-later
// The field of layers in a closed window that does not change along the axis.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "field/leakage.h"
#include "field/perimeter.h"

namespace field {

/// Axial mode n = 0: (1/h) integral over x of l(x) (x/w - s_i(x)) (x/w - s_j(x)), s_i the share of box i's current left
/// of x: the field of layers with the return current spread evenly over the window. Shape n x n, PSD; times mu0: H.
/// With l = 1 it is the part m >= 1, n = 0 of Roth's series.
[[nodiscard]] Eigen::MatrixXd uniformMode(const std::vector<CurrentBox>& boxes, const Window& window,
                                          const Perimeter& perimeter);

}  // namespace field
