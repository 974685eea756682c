// SPDX-License-Identifier: GPL-3.0-or-later
// All outputs of a network over frequency, carried between few solved frequencies.
#pragma once

#include <stop_token>
#include <vector>

#include "network/solve.h"

namespace network {

/// Piecewise polynomial in ln f through values and exact slopes at the four solved frequencies nearest to each interval
/// (degree seven, Hermite; any text on numerical analysis). Local, so a sharp resonance costs points only where it is,
/// and no pole can appear between points. Intervals are halved until a newly solved middle agrees.
class Sweep {
public:
    Sweep() = default;
    /// Solves as few frequencies from `from` to `to` as make the interpolant agree with each newly solved middle to
    /// `tolerance` (relative to each output, or to `floor` where that is larger). If `mostSolves` do not do it,
    /// `converged()` is false: the interpolant is there, and `error()` says how far it is off. Stopped, it is not
    /// there.
    static Sweep over(const Prepared& network, double from, double to, double tolerance, int mostSolves,
                      const std::stop_token& stop);

    [[nodiscard]] ComplexVector value(double frequency) const;
    /// One output alone.
    [[nodiscard]] Complex value(double frequency, int output) const;
    /// d value / d frequency, 1/Hz.
    [[nodiscard]] ComplexVector slope(double frequency) const;
    [[nodiscard]] bool converged() const noexcept { return converged_; }
    /// Whether values can be asked for.
    [[nodiscard]] bool carries() const noexcept { return !intervals_.empty(); }
    /// Greatest deviation at a last solved middle: accepted ones if converged, else of all.
    [[nodiscard]] double error() const noexcept { return error_; }
    [[nodiscard]] int solves() const noexcept { return static_cast<int>(points_.size()); }

    static constexpr double floor = 1e-6;  ///< V or ohm at unit excitation: -120 dB

private:
    struct Interval {
        std::vector<double> node;   // ln f, doubled
        ComplexMatrix coefficient;  // Newton's, outputs x nodes
    };
    [[nodiscard]] Interval interval(std::size_t left) const;
    [[nodiscard]] std::size_t intervalOf(double logFrequency) const;
    void finish();
    void takeLogarithms();
    struct Judged {
        std::vector<char> open;  // per new interval: not yet agreed
        double worst = 0;        // of those that did not
    };
    /// Adds solved middles of the open intervals.
    Judged insert(const std::vector<Point>& middles, const std::vector<char>& open, double tolerance);

    std::vector<Point> points_;  // rising
    std::vector<double> log_;
    std::vector<Interval> intervals_;
    bool converged_ = false;
    double error_ = 0;
};

}  // namespace network
