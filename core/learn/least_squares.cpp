// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/least_squares.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <unsupported/Eigen/NonLinearOptimization>

#include "learn/numbers.h"

namespace learn {

namespace {

/// The problem in numbers without bounds.
struct Unbounded {
    using Scalar = double;
    using InputType = Vector;
    using ValueType = Vector;
    using JacobianType = Matrix;

    const SquaresProblem& problem;
    const std::stop_token& stop;
    int made = 0;

    [[nodiscard]] bool bounded(Eigen::Index k) const {
        return std::isfinite(problem.low(k)) && std::isfinite(problem.high(k));
    }
    [[nodiscard]] int inputs() const { return static_cast<int>(problem.start.size()); }
    [[nodiscard]] int values() const { return static_cast<int>(problem.count); }
    [[nodiscard]] Vector inside(const Vector& u) const {
        Vector x = u;
        for (Eigen::Index k = 0; k < u.size(); ++k)
            if (bounded(k)) x(k) = problem.low(k) + (problem.high(k) - problem.low(k)) * (1 + std::sin(u(k))) / 2;
        return x;
    }
    [[nodiscard]] Vector outside(const Vector& x) const {
        constexpr double margin = 1e-4;
        Vector u = x;
        for (Eigen::Index k = 0; k < x.size(); ++k)
            if (bounded(k)) {
                const double share = (x(k) - problem.low(k)) / (problem.high(k) - problem.low(k));
                u(k) = std::asin(2 * std::clamp(share, margin, 1 - margin) - 1);
            }
        return u;
    }
    /// Slopes against the bounded numbers.
    [[nodiscard]] Matrix slopesAt(const Vector& x) {
        constexpr double share = 1e-6, least = 1e-9;
        Matrix slopes(problem.count, x.size());
        Vector above(problem.count), below(problem.count);
        for (Eigen::Index k = 0; k < x.size(); ++k) {
            const double range = bounded(k) ? problem.high(k) - problem.low(k) : 0;
            const double own = x(k) != 0 ? share * std::abs(x(k)) : least;
            const double step = problem.step.size() > 0 ? problem.step(k) : std::max(own, least * range);
            Vector moved = x;
            const double up = bounded(k) ? std::min(x(k) + step, problem.high(k)) : x(k) + step;
            const double down = bounded(k) ? std::max(x(k) - step, problem.low(k)) : x(k) - step;
            moved(k) = up;
            problem.off(moved, above);
            moved(k) = down;
            problem.off(moved, below);
            made += 2;
            slopes.col(k) = (above - below) / (up - down);
        }
        return slopes;
    }
    int operator()(const Vector& u, Vector& off) {
        if (stop.stop_requested() || made >= problem.evaluations) return -1;
        ++made;
        problem.off(inside(u), off);
        return 0;
    }
    int df(const Vector& u, Matrix& slopes) {
        if (stop.stop_requested() || made >= problem.evaluations) return -1;
        slopes = slopesAt(inside(u));
        for (Eigen::Index k = 0; k < u.size(); ++k)
            if (bounded(k)) slopes.col(k) *= (problem.high(k) - problem.low(k)) * std::cos(u(k)) / 2;
        return 0;
    }
};

}  // namespace

Squares leastSquares(const SquaresProblem& problem, const std::stop_token& stop) {
    Unbounded task{problem, stop};
    Squares result;
    Vector u = task.outside(problem.start), off(problem.count);
    problem.off(problem.start, off);
    result.before = off.squaredNorm();
    Eigen::LevenbergMarquardt<Unbounded> search(task);
    search.parameters.xtol = search.parameters.ftol = 1e-12;
    search.parameters.maxfev = problem.evaluations;
    const auto end = search.minimize(u);
    result.settled = end >= 1 && end <= 8 && end != 5;
    result.at = task.inside(u);
    problem.off(result.at, off);
    result.squares = off.squaredNorm();
    result.slopes = task.slopesAt(result.at);
    result.evaluations = task.made;
    return result;
}

}  // namespace learn
