// SPDX-License-Identifier: GPL-3.0-or-later
// Columns and tables of numbers, and how uncertainties are told. For the room's own sources.
#pragma once

#include <Eigen/Core>
#include <string>

namespace learn {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

/// "12 %" with two digits, three from 10 % on.
[[nodiscard]] std::string percentWords(double share);

}  // namespace learn
