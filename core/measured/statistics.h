// SPDX-License-Identifier: GPL-3.0-or-later
// What the readings of one test say about the units they were taken of.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "spread/intervals.h"

namespace measured {

using spread::Interval;

/// Mean and standard deviation of a sample, n - 1 in the denominator; the sum of squares is taken from the mean and
/// corrected for the mean's rounding (T. Chan, G. Golub and R. LeVeque, American Statistician 37 (1983) 242, from
/// memory).
struct Sample {
    std::size_t count = 0;
    double mean = 0, deviation = 0, least = 0, greatest = 0;
};
[[nodiscard]] Sample sampleOf(const std::vector<double>& values) noexcept;

/// A normal distribution laid through readings.
struct Distribution {
    Sample sample;
    double confidence = 0.95;
    Interval mean, deviation;  ///< by Student's t and by chi-squared
    /// Anderson and Darling's statistic with both parameters from the sample and Stephens' factor 1 + 0.75/n + 2.25/n^2
    /// (R. D'Agostino and M. Stephens, Goodness-of-fit techniques, 1986, table 4.7, from memory). Above 0.752 a normal
    /// distribution would give as much in less than 5 % of samples. Nothing of fewer than eight readings, or equal
    /// ones.
    std::optional<double> andersonDarling;
    [[nodiscard]] bool looksNormal() const { return !andersonDarling || *andersonDarling <= mostAndersonDarling; }
    static constexpr double mostAndersonDarling = 0.752;
};
[[nodiscard]] Distribution distributionOf(const std::vector<double>& values, double confidence = 0.95);

/// Cp and Cpk with intervals, of a process in control whose readings are normal.
///
///     Cp = (U - L) / (6 s)        Cpk = min(U - mean, mean - L) / (3 s)
///
/// (ISO 22514-2, from memory.) Interval of Cp: s by chi-squared of n - 1, exact. Of Cpk: Cpk +- z sqrt(1 / (9 n) +
/// Cpk^2 / (2 n - 2)) (A. Bissell, Applied Statistics 39 (1990) 331, from memory; ISO 22514-2 gives the same form).
/// With one limit there is no Cp.
struct Capability {
    std::optional<double> cp;
    double cpk = 0;
    Interval cpInterval, cpkInterval;
    double outside = 0;  ///< share of units beyond the limits, of the normal distribution
};
/// Nothing of fewer than two readings, without spread, or without a limit.
[[nodiscard]] std::optional<Capability> capability(const Sample& sample, std::optional<double> atLeast,
                                                   std::optional<double> atMost, double confidence = 0.95);

/// How a cause counts among the failures, most frequent first; equal ones by name.
struct Share {
    std::string cause;
    std::size_t units = 0;
    double share = 0, cumulative = 0;  ///< of all failures
};
[[nodiscard]] std::vector<Share> pareto(const std::vector<std::pair<std::string, std::size_t>>& causes);

}  // namespace measured
