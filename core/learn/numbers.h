// SPDX-License-Identifier: GPL-3.0-or-later
// Columns and tables of numbers, and how uncertainties are told. For the room's own sources.
#pragma once

#include <Eigen/Core>
#include <string>

namespace learn {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

/// Standard uncertainties in a half width for 95 % (JCGM 100:2008, 6.2, from memory).
inline constexpr double coverage95 = 2;

/// "12 %" with two digits, three from 10 % on.
[[nodiscard]] std::string percentWords(double share);

}  // namespace learn
