// SPDX-License-Identifier: GPL-3.0-or-later
// The least value of a function of a few bounded numbers under constraints.
#pragma once

#include <functional>
#include <stop_token>
#include <vector>

namespace seek {

/// What is to be made least, and within what.
struct Problem {
    std::vector<double> low, high;  ///< bounds, low < high
    std::vector<double> start;      ///< within the bounds
    double step = 0.1;              ///< first change of each number, as a share of its range
    double tolerance = 1e-4;        ///< ends when no number changes by more than this share of its range
    int evaluations = 100;          ///< ends after so many
    std::size_t constraints = 0;
    /// The function's value; each constraint is kept where it is not above 0.
    std::function<double(const std::vector<double>& at, std::vector<double>& constraints)> value;
};

/// The best place that was computed: the least value among those that keep every constraint within 1e-6, else the one
/// that breaks them least in sum. `evaluations`: how many were made.
struct Least {
    std::vector<double> at;
    double value = 0;
    double broken = 0;  ///< sum of the constraints above 0
    int evaluations = 0;
};

/// M. J. D. Powell's COBYLA (linear approximations of function and constraints on a simplex; A direct search
/// optimization method that models the objective and constraint functions by linear interpolation, 1994) of the
/// library NLopt: no slopes are asked for, few steps are needed, and the same problem gives the same answer. Finds a
/// minimum near the start, not the least of several. Stopped, the best so far is returned.
[[nodiscard]] Least least(const Problem& problem, const std::stop_token& stop = {});

}  // namespace seek
