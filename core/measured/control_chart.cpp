// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/control_chart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include "measured/quantiles.h"
#include "measured/statistics.h"
#include "spread/normal.h"

namespace measured {

namespace {

constexpr std::size_t mostInSubgroup = 25;

/// Trapezes are exact to rounding where the integrand dies away smoothly at both ends.
constexpr double reach = 8.5;
constexpr int steps = 340;

std::vector<double> normalShares() {
    std::vector<double> shares;
    for (int k = 0; k <= 2 * steps; ++k) shares.push_back(spread::normalProbability(reach * (k - steps) / steps));
    return shares;
}

double meanOf(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

std::vector<OutOfControl> beyond(const std::vector<double>& points, const ControlLine& line) {
    std::vector<OutOfControl> out;
    for (std::size_t k = 0; k < points.size(); ++k)
        if (points[k] < line.low || points[k] > line.high) out.push_back({k, Signal::Beyond});
    return out;
}

/// Deviations of the point from the centre.
class Runs {
public:
    Runs(const std::vector<double>& points, const ControlLine& line) {
        const double sigma = (line.high - line.centre) / 3;
        for (const double point : points) z_.push_back(sigma > 0 ? (point - line.centre) / sigma : 0);
    }
    /// Of the `last` points that end at k, `least` beyond z on one side, k among them.
    [[nodiscard]] bool together(std::size_t k, std::size_t last, std::size_t least, double z) const {
        if (k + 1 < last) return false;
        for (const double side : {1.0, -1.0}) {
            std::size_t count = 0;
            for (std::size_t i = k + 1 - last; i <= k; ++i) count += side * z_[i] > z ? 1U : 0U;
            if (count >= least && side * z_[k] > z) return true;
        }
        return false;
    }
    [[nodiscard]] bool trend(std::size_t k, std::size_t last) const {
        if (k + 1 < last) return false;
        bool rises = true, falls = true;
        for (std::size_t i = k + 2 - last; i <= k; ++i) {
            rises = rises && z_[i] > z_[i - 1];
            falls = falls && z_[i] < z_[i - 1];
        }
        return rises || falls;
    }

private:
    std::vector<double> z_;
};

std::vector<OutOfControl> signals(const std::vector<double>& points, const ControlLine& line) {
    const Runs runs(points, line);
    std::vector<OutOfControl> out;
    for (std::size_t k = 0; k < points.size(); ++k) {
        const auto add = [&](bool is, Signal signal) {
            if (is) out.push_back({k, signal});
        };
        add(points[k] < line.low || points[k] > line.high, Signal::Beyond);
        add(runs.together(k, 3, 2, 2), Signal::TwoOfThree);
        add(runs.together(k, 5, 4, 1), Signal::FourOfFive);
        add(runs.together(k, 8, 8, 0), Signal::EightOneSide);
        add(runs.trend(k, 6), Signal::SixTrend);
    }
    return out;
}

/// A chart of points, each the mean of `n` values, and of ranges of `rangeOf` values.
ControlChart chart(std::vector<double> points, std::vector<double> ranges, std::size_t n, std::size_t rangeOf) {
    const RangeFactors factors = rangeFactors(rangeOf);
    ControlChart c;
    c.points = std::move(points);
    c.ranges = std::move(ranges);
    const double range = meanOf(c.ranges), mean = meanOf(c.points);
    c.deviation = range / factors.d2;
    const double half = 3 * c.deviation / std::sqrt(static_cast<double>(n));
    c.line = {mean, mean - half, mean + half};
    c.rangeLine = {range, std::max(0.0, range - 3 * factors.d3 * c.deviation), range + 3 * factors.d3 * c.deviation};
    c.out = signals(c.points, c.line);
    c.rangesOut = beyond(c.ranges, c.rangeLine);
    return c;
}

}  // namespace

RangeFactors rangeFactors(std::size_t n) {
    if (n < 2 || n > mostInSubgroup) throw std::invalid_argument("A range is of 2 to 25 values.");
    static const std::vector<double> share = normalShares();
    const double step = reach / steps;
    const auto power = [n](double base) { return std::pow(base, static_cast<double>(n)); };
    std::vector<double> below, above;  // F^n and (1 - F)^n; the latter by symmetry, exact in the tail
    for (const double f : share) below.push_back(power(f));
    above.assign(below.rbegin(), below.rend());
    double mean = 0, square = 0;
    for (std::size_t y = 0; y < share.size(); ++y) {
        mean += 1 - below[y] - above[y];
        for (std::size_t x = 0; x < y; ++x) square += 1 - below[y] - above[x] + power(share[y] - share[x]);
        square += (1 - below[y] - above[y]) / 2;  // half a cell on the diagonal
    }
    const double d2 = mean * step;
    // The cells cut by the diagonal are too great by step^2 / 12 times the slope there, whose integral is 1 for any n.
    return {d2, std::sqrt(2 * square * step * step - step * step / 6 - d2 * d2)};
}

std::string_view words(Signal signal) noexcept {
    constexpr std::array<std::string_view, 5> all{
        "outside the limits", "two of three beyond two deviations on one side",
        "four of five beyond one deviation on one side", "eight in a row on one side of the centre",
        "six in a row that rise or fall"};
    return all[static_cast<std::size_t>(signal)];
}

ControlChart individualsChart(const std::vector<double>& values) {
    if (values.size() < 2) throw std::invalid_argument("A chart is of two values or more.");
    std::vector<double> ranges;
    for (std::size_t k = 1; k < values.size(); ++k) ranges.push_back(std::abs(values[k] - values[k - 1]));
    return chart(values, std::move(ranges), 1, 2);
}

ControlChart meansChart(const std::vector<double>& values, std::size_t n) {
    if (n < 2 || n > mostInSubgroup || values.size() < 2 * n)
        throw std::invalid_argument("A chart of means is of two subgroups or more, of 2 to 25 values each.");
    std::vector<double> means, ranges;
    for (std::size_t k = 0; k + n <= values.size(); k += n) {
        const auto from = values.begin() + static_cast<std::ptrdiff_t>(k), to = from + static_cast<std::ptrdiff_t>(n);
        means.push_back(std::accumulate(from, to, 0.0) / static_cast<double>(n));
        const auto [least, greatest] = std::minmax_element(from, to);
        ranges.push_back(*greatest - *least);
    }
    return chart(std::move(means), std::move(ranges), n, n);
}

Drift drift(const std::vector<double>& days, const std::vector<double>& readings) {
    if (days.size() < 3 || days.size() != readings.size())
        throw std::invalid_argument("A drift is of three readings or more.");
    const auto n = static_cast<double>(days.size());
    const double day = meanOf(days), level = meanOf(readings);
    double dd = 0, dr = 0;
    for (std::size_t k = 0; k < days.size(); ++k) {
        dd += (days[k] - day) * (days[k] - day);
        dr += (days[k] - day) * (readings[k] - level);
    }
    if (!(dd > 0)) throw std::invalid_argument("A drift is of readings of more than one day.");
    Drift d;
    d.perDay = dr / dd;
    double squares = 0;
    for (std::size_t k = 0; k < days.size(); ++k) {
        const double from = readings[k] - level - d.perDay * (days[k] - day);
        squares += from * from;
    }
    const auto [first, last] = std::minmax_element(days.begin(), days.end());
    d.sinceFirst = d.perDay * (*last - *first);
    d.scatter = std::sqrt(squares / (n - 2));
    d.half = studentQuantile(0.975, n - 2) * d.scatter / std::sqrt(dd);
    d.isReal = std::abs(d.perDay) > d.half;
    return d;
}

}  // namespace measured
