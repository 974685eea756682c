// SPDX-License-Identifier: GPL-3.0-or-later
// Shewhart's charts: whether units come from a process that stays as it is.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace measured {

/// Mean and standard deviation of the range of n normal values with deviation 1, 2 <= n <= 25, by quadrature:
///
///     d2 = integral of 1 - F^n - (1 - F)^n dx
///     d2^2 + d3^2 = 2 integral over x < y of 1 - F(y)^n - (1 - F(x))^n + (F(y) - F(x))^n
///
/// (L. Tippett, Biometrika 17 (1925) 364, from memory.)
struct RangeFactors {
    double d2 = 0, d3 = 0;
};
[[nodiscard]] RangeFactors rangeFactors(std::size_t n);

/// A line with its limits three deviations away; a lower limit of ranges is 0 at least.
struct ControlLine {
    double centre = 0, low = 0, high = 0;
};

/// Why a point is out of control.
enum class Signal {
    Beyond,        ///< outside the limits
    TwoOfThree,    ///< two of three points beyond two deviations on one side
    FourOfFive,    ///< four of five beyond one deviation on one side
    EightOneSide,  ///< eight points in a row on one side of the centre
    SixTrend       ///< six points in a row that rise, or fall
};
[[nodiscard]] std::string_view words(Signal signal) noexcept;
/// A run that ends at `point`, counted from 0.
struct OutOfControl {
    std::size_t point = 0;
    Signal signal = Signal::Beyond;
    bool operator==(const OutOfControl&) const = default;
};

struct ControlChart {
    std::vector<double> points;  ///< single values, or means of subgroups
    std::vector<double> ranges;  ///< moving ranges of two, one fewer than points; or of subgroups
    ControlLine line, rangeLine;
    double deviation = 0;                      ///< of single values, from the ranges
    std::vector<OutOfControl> out, rangesOut;  ///< of ranges only those beyond their limits
};

/// Single values, deviation from the mean moving range over d2 of two: limits mean +- 3 MR / 1.128 (NIST/SEMATECH
/// e-Handbook of Statistical Methods, 6.3.2.2, from memory; ISO 7870-2). Rules of runs: the e-Handbook, 6.3.2, Western
/// Electric's. Throws std::invalid_argument of fewer than two values.
[[nodiscard]] ControlChart individualsChart(const std::vector<double>& values);

/// Means of subgroups of n that follow each other, deviation from the mean range: limits +- 3 R / (d2 sqrt n), ranges
/// R (1 +- 3 d3 / d2) (the same, 6.3.2.1). A last subgroup that is not full is left out. Throws std::invalid_argument
/// unless 2 <= n <= 25 and two subgroups are full.
[[nodiscard]] ControlChart meansChart(const std::vector<double>& values, std::size_t n);

/// Readings of one reference unit, kept from the first lot: how the fixture drifts.
struct Drift {
    double perDay = 0;      ///< slope by least squares
    double half = 0;        ///< half width of the slope's 95 % interval, by Student's t
    double sinceFirst = 0;  ///< slope times the days from the first to the last reading
    double scatter = 0;     ///< standard deviation of the readings about the line
    bool isReal = false;    ///< the interval of the slope leaves out 0
};
/// Days and readings, three or more, not all of one day; else throws std::invalid_argument.
[[nodiscard]] Drift drift(const std::vector<double>& days, const std::vector<double>& readings);

}  // namespace measured
