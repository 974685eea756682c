// SPDX-License-Identifier: GPL-3.0-or-later
// Functions of frequency as sums of relaxations, which fixed elements can make.
#pragma once

#include <Eigen/Core>
#include <complex>
#include <functional>
#include <vector>

namespace exchange {

/// weight / (1 + jw tau); weight >= 0, tau in s.
struct Relaxation {
    double weight = 0;
    double tau = 0;
};

/// constant + sum of relaxations.
struct RelaxationSum {
    double constant = 0;
    std::vector<Relaxation> terms;
    double residual = 0;  ///< largest |fit - function| / |function| over the fitted band
    [[nodiscard]] std::complex<double> at(double frequency) const;
};

/// x >= 0 that minimises |A x - b|. C. L. Lawson and R. J. Hanson, Solving Least Squares Problems (1974), ch. 23 (from
/// memory). A has more rows than columns that are used at once.
[[nodiscard]] Eigen::VectorXd leastSquaresNonNegative(const Eigen::MatrixXd& a, const Eigen::VectorXd& b);

/// What to fit: `function` of f in Hz over [from, to], weights of f on the deviation of its real and imaginary part
/// (none: 1 over the function's size); `perDecade` choices of tau.
struct RelaxationTask {
    std::function<std::complex<double>(double)> function;
    std::function<double(double)> weight, weightOfLoss;
    double from = 10, to = 1e6;
    int perDecade = 4;
    double constant = 0;        ///< taken as it is, or
    bool freeConstant = false;  ///< of either sign, found too
};
[[nodiscard]] RelaxationSum relaxationSum(const RelaxationTask& task);

}  // namespace exchange
