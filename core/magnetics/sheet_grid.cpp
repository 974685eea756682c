// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/sheet_grid.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace magnetics {
namespace {

/// Legendre polynomial of a degree and the one below it.
struct Legendre {
    double value = 1, below = 0;
    Legendre(int degree, double x) {
        for (int n = 1; n <= degree; ++n) {
            const double next = ((2 * n - 1) * x * value - (n - 1) * below) / n;
            below = value;
            value = next;
        }
    }
};

/// Gauss-Lobatto points of [-1, 1], rising: the ends and where the slope of a Legendre polynomial of `degree` is zero,
/// by Newton's method on (x^2 - 1) P' / degree = x P - P_below.
std::vector<double> lobattoPoints(int degree) {
    std::vector<double> points;
    points.reserve(static_cast<std::size_t>(degree) + 1);
    for (int i = 0; i <= degree; ++i) {
        double x = -std::cos(std::numbers::pi * i / degree);
        for (int round = 0; round < 50 && i > 0 && i < degree; ++round) {
            const Legendre p(degree, x);
            const double step = (x * p.value - p.below) / ((degree + 1) * p.value);
            x -= step;
            if (std::abs(step) < 1e-15) break;
        }
        points.push_back(x);
    }
    return points;
}

}  // namespace

SheetGrid::SheetGrid(int count) {
    const int degree = 2 * count - 1;
    const std::vector<double> points = lobattoPoints(degree);
    const auto all = static_cast<Eigen::Index>(points.size());
    const auto valueAt = [&](Eigen::Index i) { return Legendre(degree, points[static_cast<std::size_t>(i)]).value; };
    for (auto i = static_cast<std::size_t>(count); i < points.size(); ++i) {
        places.push_back(points[i]);
        const double value = valueAt(static_cast<Eigen::Index>(i));
        weights.push_back(2 / (degree * (degree + 1) * value * value));
    }
    // Slopes at the places of the even polynomials that are 1 at one place and its mirror image.
    const auto slope = [&](Eigen::Index at, Eigen::Index of) {
        if (at != of)
            return valueAt(at) /
                   (valueAt(of) * (points[static_cast<std::size_t>(at)] - points[static_cast<std::size_t>(of)]));
        return at == all - 1 ? degree * (degree + 1) / 4.0 : 0.0;
    };
    Eigen::MatrixXd slopes(count, count);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j)
            slopes(i, j) = slope(count + i, count + j) + slope(count + i, count - 1 - j);
    const Eigen::Map<const Eigen::VectorXd> mass(weights.data(), count);
    stiffness = slopes.transpose() * mass.asDiagonal() * slopes;
}

int placesFor(double halfOverSkinDepth) noexcept {
    return std::clamp(static_cast<int>(std::ceil(3 + 2 * std::sqrt(halfOverSkinDepth))), 3, 24);
}

}  // namespace magnetics
