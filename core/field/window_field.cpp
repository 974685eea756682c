// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/window_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace field {
namespace {

using std::numbers::pi;
constexpr double forgotten = 15;  // exponents beyond count as zero

/// Adds the field of one rectangle with unit current. Both corner functions share their logarithm and their angle.
void addRectangle(const coil::Box& b, double x, double y, double& hx, double& hy) {
    const double u[2] = {x - b.x0, x - b.x1}, v[2] = {y - b.y0, y - b.y1};
    const double scale = 1 / (2 * pi * b.width() * b.height());
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j) {
            const double r2 = u[i] * u[i] + v[j] * v[j];
            if (r2 == 0) continue;
            const double sign = i == j ? scale : -scale, logarithm = std::log(r2) / 2;
            const double steep = v[j] == 0 ? std::copysign(pi / 2, u[i]) : std::atan(u[i] / v[j]);  // atan(u/v)
            const double flat = u[i] == 0 ? 0 : std::copysign(pi / 2, u[i] * v[j]) - steep;         // atan(v/u)
            hx -= sign * (u[i] * logarithm + v[j] * steep);
            hy += sign * (v[j] * logarithm + u[i] * flat);
        }
}

/// cos(n t), sin(n t) for n = 1… by the addition theorem.
void fillWaves(double t, double* cosine, double* sine, Eigen::Index count, Eigen::Index stride) {
    const double c = std::cos(t), s = std::sin(t);
    double cn = c, sn = s;
    for (Eigen::Index n = 0; n < count; ++n) {
        cosine[n * stride] = cn;
        sine[n * stride] = sn;
        const double next = cn * c - sn * s;
        sn = sn * c + cn * s;
        cn = next;
    }
}

}  // namespace

WindowField::WindowField(std::vector<CurrentBox> boxes, const Window& window, int terms)
    : boxes_(std::move(boxes)), window_(window), terms_(terms) {
    const auto count = static_cast<Eigen::Index>(boxes_.size());
    for (auto* table : {&axial_, &inner_, &outer_}) table->resize(terms, count);
    for (Eigen::Index j = 0; j < count; ++j) {
        const auto& b = boxes_[static_cast<std::size_t>(j)].box;
        for (int n = 1; n <= terms; ++n) {
            const double k = n * pi / window.height;
            const double mean = (std::sin(k * b.y1) - std::sin(k * b.y0)) / (k * b.height());
            axial_(n - 1, j) = mean / (2 * k * -std::expm1(-2 * k * window.width));
            const double share = -std::expm1(-k * b.width()) / (k * b.width());
            inner_(n - 1, j) = share * (1 + std::exp(-k * (b.x0 + b.x1)));
            outer_(n - 1, j) = share * (1 + std::exp(-k * (2 * window.width - b.x0 - b.x1)));
        }
    }
}

/// Amplitudes of the modes of box j at x: of the potential, and of its slope. Returns how many count.
Eigen::Index WindowField::amplitudes(Eigen::Index j, const Line& line, Eigen::VectorXd& value,
                                     Eigen::VectorXd& slope) const {
    const auto& b = boxes_[static_cast<std::size_t>(j)].box;
    const double x = line.x, unit = pi / window_.height;
    const bool fromInside = x >= b.x1;
    const double gap = fromInside ? x - b.x1 : b.x0 - x;
    if (gap < 0) {  // the line runs through the box
        for (Eigen::Index n = 0; n < terms_; ++n) {
            const double k = static_cast<double>(n + 1) * unit, whole = k * b.width();
            const double left = -std::expm1(-k * (x - b.x0)) / whole * (1 + std::exp(-k * (b.x0 + x)));
            const double right =
                -std::expm1(-k * (b.x1 - x)) / whole * (1 + std::exp(-k * (2 * window_.width - b.x1 - x)));
            value(n) = axial_(n, j) * (left * (1 + line.farWall(n)) + right * (1 + line.tongue(n)));
            slope(n) = axial_(n, j) * k * (right * (1 - line.tongue(n)) - left * (1 - line.farWall(n)));
        }
        return terms_;
    }
    const auto count = gap * unit * static_cast<double>(terms_) < forgotten
                           ? terms_
                           : static_cast<Eigen::Index>(forgotten / (gap * unit));
    const Eigen::MatrixXd& source = fromInside ? inner_ : outer_;
    const Eigen::VectorXd& wall = fromInside ? line.farWall : line.tongue;
    const double fall = std::exp(-gap * unit), sign = fromInside ? -1 : 1;
    double decay = 1;
    for (Eigen::Index n = 0; n < count; ++n) {
        decay *= fall;
        const double amplitude = axial_(n, j) * source(n, j) * decay;
        value(n) = amplitude * (1 + wall(n));
        slope(n) = sign * static_cast<double>(n + 1) * unit * amplitude * (1 - wall(n));
    }
    return count;
}

Eigen::MatrixXd WindowField::at(double x, const std::vector<double>& y) const {
    const auto count = static_cast<Eigen::Index>(boxes_.size()), points = static_cast<Eigen::Index>(y.size());
    const double unit = pi / window_.height, factor = -2 / window_.height;
    Line line{x, Eigen::VectorXd(terms_), Eigen::VectorXd(terms_)};
    for (Eigen::Index n = 0; n < terms_; ++n) {
        line.tongue(n) = std::exp(-2 * static_cast<double>(n + 1) * unit * x);
        line.farWall(n) = std::exp(-2 * static_cast<double>(n + 1) * unit * (window_.width - x));
    }
    Eigen::MatrixXd cosine(points, terms_), sine(points, terms_);
    for (Eigen::Index p = 0; p < points; ++p)
        fillWaves(unit * y[static_cast<std::size_t>(p)], &cosine(p, 0), &sine(p, 0), terms_, points);
    for (Eigen::Index n = 0; n < terms_; ++n) sine.col(n) *= static_cast<double>(n + 1) * unit;
    Eigen::MatrixXd result(2 * points, count);
    Eigen::VectorXd value(terms_), slope(terms_);
    for (Eigen::Index j = 0; j < count; ++j) {
        const auto modes = amplitudes(j, line, value, slope);
        const auto& b = boxes_[static_cast<std::size_t>(j)].box;
        const double passed = std::clamp((x - b.x0) / b.width(), 0.0, 1.0);
        result.col(j).head(points).noalias() = factor * (sine.leftCols(modes) * value.head(modes));
        result.col(j).tail(points).noalias() = factor * (cosine.leftCols(modes) * slope.head(modes));
        result.col(j).tail(points).array() += (passed - x / window_.width) / window_.height;
    }
    return result;
}

Eigen::MatrixXd openField(const std::vector<CurrentBox>& boxes, double x, const std::vector<double>& y) {
    const auto count = static_cast<Eigen::Index>(boxes.size()), points = static_cast<Eigen::Index>(y.size());
    Eigen::MatrixXd result = Eigen::MatrixXd::Zero(2 * points, count);
    for (Eigen::Index j = 0; j < count; ++j) {
        const auto& b = boxes[static_cast<std::size_t>(j)].box;
        for (Eigen::Index p = 0; p < points; ++p) {
            const double height = y[static_cast<std::size_t>(p)];
            addRectangle(b, x, height, result(p, j), result(points + p, j));
            addRectangle({-b.x1, -b.x0, b.y0, b.y1}, x, height, result(p, j), result(points + p, j));
        }
    }
    return result;
}

}  // namespace field
