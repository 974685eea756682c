// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/window_series.h"

#include <algorithm>
#include <cmath>

namespace field {
namespace {

/// Two-point Gauss rule on each stretch between the sorted points: exact for cubics.
template <class Function>
double integral(std::vector<double> points, Function f) {
    std::sort(points.begin(), points.end());
    const double offset = 0.5 / std::sqrt(3.0);
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double length = points[i] - points[i - 1], middle = (points[i] + points[i - 1]) / 2;
        if (length > 0) sum += length / 2 * (f(middle - offset * length) + f(middle + offset * length));
    }
    return sum;
}

double share(const coil::Box& box, double x) {
    return std::clamp((x - box.x0) / box.width(), 0.0, 1.0);
}

}  // namespace

Eigen::MatrixXd uniformMode(const std::vector<CurrentBox>& boxes, const Window& window, const Perimeter& perimeter) {
    const auto count = static_cast<Eigen::Index>(boxes.size());
    const double w = window.width;
    const auto box = [&](Eigen::Index i) -> const coil::Box& { return boxes[static_cast<std::size_t>(i)].box; };
    const auto points = [&](std::initializer_list<double> inner) {
        std::vector<double> all{0, w};
        if (perimeter.mirrorAt > 0) all.push_back(perimeter.mirrorAt);
        all.insert(all.end(), inner);
        return all;
    };
    const double whole = integral(points({}), [&](double x) { return perimeter.at(x) * x * x / (w * w); });
    Eigen::VectorXd slope(count), alone(count);  // with x/w, and what a box outside all others gives
    for (Eigen::Index i = 0; i < count; ++i) {
        const auto ends = points({box(i).x0, box(i).x1});
        slope(i) = integral(ends, [&](double x) { return perimeter.at(x) * x / w * share(box(i), x); });
        alone(i) = integral(ends, [&](double x) { return perimeter.at(x) * share(box(i), x); });
    }
    Eigen::MatrixXd result(count, count);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j <= i; ++j) {
            const auto &a = box(i), &b = box(j);
            const double both = a.x0 >= b.x1   ? alone(i)
                                : b.x0 >= a.x1 ? alone(j)
                                               : integral(points({a.x0, a.x1, b.x0, b.x1}), [&](double x) {
                                                     return perimeter.at(x) * share(a, x) * share(b, x);
                                                 });
            result(i, j) = result(j, i) = (whole - slope(i) - slope(j) + both) / window.height;
        }
    return result;
}

}  // namespace field
