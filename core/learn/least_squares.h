// SPDX-License-Identifier: GPL-3.0-or-later
// Nonlinear least squares within bounds, and what the data say about each number.
#pragma once

#include <Eigen/Core>
#include <functional>
#include <stop_token>

namespace learn {

/// What is to be made least: the sum of squares of `off`, each in units of its standard uncertainty.
struct SquaresProblem {
    Eigen::VectorXd start, low, high;  ///< low <= start <= high; low < high
    Eigen::Index count = 0;            ///< of deviations
    std::function<void(const Eigen::VectorXd& at, Eigen::VectorXd& off)> off;
    /// Step of each number for slopes; empty: 1e-6 of its size, at least 1e-9 of its range.
    Eigen::VectorXd step;
    int evaluations = 400;  ///< ends after so many, slopes' counted
};

struct Squares {
    Eigen::VectorXd at;
    double squares = 0, before = 0;  ///< sum of squares at the end and at the start
    Eigen::MatrixXd slopes;          ///< d off / d number there, count x numbers
    bool settled = false;            ///< came to rest, not merely to the end of its evaluations
    int evaluations = 0;
};

/// Levenberg's and Marquardt's method (K. Levenberg 1944, D. Marquardt 1963; the library Eigen's search after
/// J. J. More, 1978). A number is written low + (high - low) (1 + sin u) / 2, so that none leaves its bounds (F. James
/// and M. Roos, Comput. Phys. Commun. 10 (1975) 343, from memory); bounds of infinity are none. Slopes by central
/// differences. The search begins within the bounds by a ten-thousandth of the range, where the sine has a slope.
[[nodiscard]] Squares leastSquares(const SquaresProblem& problem, const std::stop_token& stop = {});

}  // namespace learn
