// SPDX-License-Identifier: GPL-3.0-or-later
// A rising curve through points, without wiggles.
#pragma once

#include <vector>

namespace magnetics {

/// A value on a curve and its slope there.
struct CurvePlace {
    double value = 0;
    double slope = 0;
};

/// Slope at a point of a monotone cubic from the secants on both sides, `before` and `after` wide: weighted harmonic
/// mean (F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5, 1984, from memory). Both secants > 0.
[[nodiscard]] double innerSlope(double before, double secantBefore, double after, double secantAfter) noexcept;

/// A cubic piece from (x0, y0) with slope s0 to (x1, y1) with slope s1.
struct CurvePiece {
    double x0 = 0, y0 = 0, s0 = 0, x1 = 0, y1 = 0, s1 = 0;
    /// Newton form of the Hermite cubic: exact at both ends.
    [[nodiscard]] CurvePlace at(double x) const noexcept;
};

/// An odd, rising curve through the origin and further points: a monotone cubic; beyond the last point straight with
/// the slope there. The first piece is odd too, s0 x + k x^3, where that rises: no bend at the origin, so that what
/// bends there is left to whoever adds it. Slopes are limited to three secants, up to which a cubic stays monotone (F.
/// N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17, 1980, from memory).
class OddCurve {
public:
    struct Knot {
        double x = 0, y = 0;
        double slope = 0;  ///< 0: from its neighbours
    };
    OddCurve() = default;
    /// `knots` rising in x and y, the first at (0, 0) with its slope; at least two.
    explicit OddCurve(std::vector<Knot> knots);
    [[nodiscard]] CurvePlace at(double x) const noexcept;
    [[nodiscard]] bool empty() const noexcept { return knots_.empty(); }

private:
    std::vector<Knot> knots_;
};

}  // namespace magnetics
