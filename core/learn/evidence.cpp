// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/evidence.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "learn/numbers.h"

namespace learn {

namespace {

/// ln of the integral of exp(-a (t - m)^2 / 2) for t from 0 to 1, also far out in a tail.
double logPiece(double a, double m) {
    constexpr double flat = 1e-9, far = 5;
    if (a < flat) return -a * (0.5 - m) * (0.5 - m) / 2;
    const double root = std::sqrt(a);
    const double low = -m * root, high = (1 - m) * root;
    const double near = low > 0 ? low : high < 0 ? -high : 0;
    if (near < far) {
        const double share = (std::erf(high / std::numbers::sqrt2) - std::erf(low / std::numbers::sqrt2)) / 2;
        if (share > 0) return std::log(share * std::sqrt(2 * std::numbers::pi / a));
    }
    // Mills' ratio of the nearer end, less what lies beyond the further one.
    const double further = std::max(std::abs(low), std::abs(high));
    const double all = -near * near / 2 - std::log(std::max(near, 1.0)) - std::log(root);
    const double beyond = (near * near - further * further) / 2 + std::log(std::max(near, 1.0) / further);
    return all + std::log1p(-std::min(0.999, std::exp(beyond)));
}

double sumOfLogs(const std::vector<double>& all) {
    const double most = *std::max_element(all.begin(), all.end());
    if (!std::isfinite(most)) return most;
    double sum = 0;
    for (const double one : all) sum += std::exp(one - most);
    return most + std::log(sum);
}

}  // namespace

Evidence evidence(const Vector& read, const Path& path, const Vector& none, const Matrix& base,
                  const FaultDoubt& doubt) {
    Evidence all;
    all.least = std::numeric_limits<double>::infinity();
    std::vector<double> pieces;
    const std::size_t count = std::max<std::size_t>(1, path.at.size() - 1);
    for (std::size_t k = 0; k < count; ++k) {
        const Vector& from = path.at[k];
        const Vector& to = path.at[std::min(k + 1, path.at.size() - 1)];
        Matrix covariance = base;
        const Vector away = ((from + to) / 2 - none).cwiseAbs();
        covariance.diagonal() += (doubt.share * away + doubt.growth * away.cwiseAbs2()).cwiseAbs2();
        const Eigen::LLT<Matrix> factor(covariance);
        const Vector off = factor.matrixL().solve(read - from), along = factor.matrixL().solve(to - from);
        const double a = along.squaredNorm(), m = a > 0 ? along.dot(off) / a : 0;
        const double least = off.squaredNorm() - a * m * m;
        const double logDeterminant = 2 * factor.matrixLLT().diagonal().array().log().sum();
        pieces.push_back(logPiece(a, m) - (least + logDeterminant) / 2 - std::log(static_cast<double>(count)));
        const double nearest = std::clamp(m, 0.0, 1.0), q = least + a * (nearest - m) * (nearest - m);
        if (q < all.least) {
            all.least = q;
            all.place = static_cast<double>(k) + nearest;
            all.best = from + nearest * (to - from);
        }
    }
    all.logarithm = sumOfLogs(pieces);
    return all;
}

}  // namespace learn
