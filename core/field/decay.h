// SPDX-License-Identifier: GPL-3.0-or-later
// Decaying exponentials over evenly spaced exponents.
#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace field {

/// Fills a column with e^-(start + q step), q = 0, 1, ...: four interleaved rows of products, an exp for each column
/// and not for each number (relative error some q/4 eps). Where the first is below 1e-60 all are zero: numbers too
/// small for the usual form are slow.
template <class Column>
void fillDecay(double start, double step, Column&& column) {
    constexpr Eigen::Index apart = 4;
    constexpr double nothing = 138;
    if (start > nothing) {
        column.setZero();
        return;
    }
    const Eigen::Index count = column.size();
    if (count == 0) return;
    const double once = std::exp(-step), fourTimes = once * once * once * once;
    column(0) = std::exp(-start);
    for (Eigen::Index q = 1; q < std::min(apart, count); ++q) column(q) = column(q - 1) * once;
    for (Eigen::Index q = apart; q < count; ++q) column(q) = column(q - apart) * fourTimes;
}

}  // namespace field
