// SPDX-License-Identifier: GPL-3.0-or-later
// The modes along the axis of the field in a closed window.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "field/leakage.h"

namespace field {

/// Axial modes n >= 1, shape n x n, PSD; times mu0: H per metre of turn.
///
///     (2/h) sum_n F_i F_j <g_n>_ij,   F_i = mean of cos(k y) over box i,  k = n pi / h,
///     g_n(x, x') = cosh(k x<) cosh(k (w - x>)) / (k sinh(k w)), its mean over both boxes in decaying exponentials.
///
/// Terms fall as n^-2 up to k d = 1 for boxes d apart and as n^-4 beyond: summed to k a = 4 for the thinnest box, at
/// least 160 and at most 2000 terms, and the mean of the rest added. Thin neighbours are within 1e-4 of lambda.
[[nodiscard]] Eigen::MatrixXd axialModes(const std::vector<CurrentBox>& boxes, const Window& window);

}  // namespace field
