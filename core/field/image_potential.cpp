// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/image_potential.h"

#include <cmath>
#include <numbers>

namespace field {
namespace {

/// Fourfold antiderivative of ln r, even in both arguments.
double antiderivative(double u, double v) {
    u = std::abs(u), v = std::abs(v);
    const double u2 = u * u, v2 = v * v, r2 = u2 + v2;
    if (r2 == 0) return 0;
    const double angle = std::atan2(v, u);
    const double logarithm = (u2 * u2 - 6 * u2 * v2 + v2 * v2) * std::log(r2) / 2;
    const double turning = 4 * u * v * (u2 * angle + v2 * (std::numbers::pi / 2 - angle));
    return -(logarithm - turning) / 24 - u2 * v2 * (25.0 / 48);
}

}  // namespace

double meanLogDistance(const coil::Box& a, const coil::Box& b) {
    const double v[4] = {a.y1 - b.y0, a.y0 - b.y1, a.y1 - b.y1, a.y0 - b.y0};
    // Layers of one height are the rule: four axial distances become two.
    const bool level = std::abs(v[2]) + std::abs(v[3]) < 1e-9 * std::abs(v[0]);
    const auto axial = [&](double u) {
        if (level) return 2 * (antiderivative(u, v[0]) - antiderivative(u, 0));
        return antiderivative(u, v[0]) + antiderivative(u, v[1]) - antiderivative(u, v[2]) - antiderivative(u, v[3]);
    };
    const double sum = axial(a.x1 - b.x0) + axial(a.x0 - b.x1) - axial(a.x1 - b.x1) - axial(a.x0 - b.x0);
    return sum / (a.width() * a.height() * b.width() * b.height());
}

Eigen::MatrixXd imageMatrix(const std::vector<coil::Box>& boxes, double scale) {
    const auto count = static_cast<Eigen::Index>(boxes.size());
    std::vector<coil::Box> unit, image;
    for (const auto& b : boxes) {
        unit.push_back({b.x0 / scale, b.x1 / scale, b.y0 / scale, b.y1 / scale});
        image.push_back({-unit.back().x1, -unit.back().x0, unit.back().y0, unit.back().y1});
    }
    Eigen::MatrixXd result(count, count);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j <= i; ++j) {
            const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
            const double logs = meanLogDistance(unit[a], unit[b]) + meanLogDistance(unit[a], image[b]);
            result(i, j) = result(j, i) = -logs / (2 * std::numbers::pi);
        }
    return result;
}

}  // namespace field
