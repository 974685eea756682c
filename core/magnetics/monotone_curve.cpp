// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/monotone_curve.h"

#include <algorithm>
#include <cmath>

namespace magnetics {

double innerSlope(double before, double secantBefore, double after, double secantAfter) noexcept {
    const double weightBefore = before + 2 * after;
    const double weightAfter = 2 * before + after;
    return (weightBefore + weightAfter) / (weightBefore / secantBefore + weightAfter / secantAfter);
}

CurvePlace CurvePiece::at(double x) const noexcept {
    const double step = x1 - x0;
    const double mean = (y1 - y0) / step;
    const double t = (x - x0) / step;
    const double bend = 3 * mean - 2 * s0 - s1;
    const double twist = s0 + s1 - 2 * mean;
    return {y0 + step * t * (s0 + t * (bend + t * twist)), s0 + t * (2 * bend + 3 * t * twist)};
}

OddCurve::OddCurve(std::vector<Knot> knots) : knots_(std::move(knots)) {
    const auto secant = [&](std::size_t i) {
        return (knots_[i + 1].y - knots_[i].y) / (knots_[i + 1].x - knots_[i].x);
    };
    const std::size_t last = knots_.size() - 1;
    // s0 x + k x^3 through the first point has this slope there.
    knots_[1].slope = 3 * secant(0) - 2 * knots_[0].slope;
    for (std::size_t i = 0; i <= last; ++i) {
        Knot& knot = knots_[i];
        const double before = i > 0 ? secant(i - 1) : secant(0), after = i < last ? secant(i) : secant(last - 1);
        if (knot.slope <= 0)
            knot.slope = i > 0 && i < last
                             ? innerSlope(knot.x - knots_[i - 1].x, before, knots_[i + 1].x - knot.x, after)
                             : std::min(before, after);
        knot.slope = std::min(knot.slope, 3 * std::min(before, after));
    }
}

CurvePlace OddCurve::at(double x) const noexcept {
    const double size = std::abs(x);
    const auto above = std::upper_bound(knots_.begin() + 1, knots_.end(), size,
                                        [](double value, const Knot& knot) { return value < knot.x; });
    CurvePlace place;
    if (above == knots_.end()) {
        const Knot& end = knots_.back();
        place = {end.y + end.slope * (size - end.x), end.slope};
    } else {
        const Knot& low = *(above - 1);
        place = CurvePiece{low.x, low.y, low.slope, above->x, above->y, above->slope}.at(size);
    }
    return {std::copysign(place.value, x), place.slope};
}

}  // namespace magnetics
