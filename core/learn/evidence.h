// SPDX-License-Identifier: GPL-3.0-or-later
// How well readings fit a fault whose size is not known.
#pragma once

#include <Eigen/Core>
#include <vector>

namespace learn {

/// A fault's readings at its sizes, the numbers that were read alone.
struct Path {
    std::vector<Eigen::VectorXd> at;  ///< one or more
};

struct Evidence {
    double logarithm = 0;  ///< of the integral of exp(-q/2) / sqrt(det S) over the path, which counts as 1 long
    double least = 0;      ///< q = (y - f)^T S^-1 (y - f) at the best place
    double place = 0;      ///< of that, in steps along the path: 1.5 is half way from the second size to the third
    Eigen::VectorXd best;  ///< f there
};

/// How well it is known what a fault does: d in logarithms is known to share |d| + growth d^2. What all but cancels
/// what was there leaves a rest that is known badly.
struct FaultDoubt {
    double share = 0, growth = 0;
};

/// q is a parabola along each straight piece, so that the piece's integral is a difference of two error functions. S is
/// `base` and the squares of the doubt of what the piece's middle stands away from `none`.
[[nodiscard]] Evidence evidence(const Eigen::VectorXd& read, const Path& path, const Eigen::VectorXd& none,
                                const Eigen::MatrixXd& base, const FaultDoubt& doubt);

}  // namespace learn
