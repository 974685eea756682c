// SPDX-License-Identifier: GPL-3.0-or-later
// Functions of frequency as sums of partial fractions with poles in common, and their answers in time.
#pragma once

#include <complex>
#include <vector>

namespace analysis {

/// Functions of one linear network, F_i(s) = sum_k r_ik / (s - p_k). A complex pole stands for itself and its
/// conjugate.
struct PartialFractions {
    std::vector<std::complex<double>> poles;                 ///< rad/s, real part < 0, imaginary part >= 0
    std::vector<std::vector<std::complex<double>>> residue;  ///< a row a function
    double error = 0;                                        ///< greatest deviation in the measure that was fitted
    [[nodiscard]] std::complex<double> at(std::size_t function, double frequency) const;
};

/// Fits functions that are given at rising frequencies, Hz, with `order` poles: vector fitting with relaxed norm
/// (B. Gustavsen and A. Semlyen, IEEE Trans. Power Delivery 14, 1999; B. Gustavsen, ibid. 21, 2006; both from memory),
/// deviations over the function's size there (or 3 % of its greatest), times the
/// weight at each frequency (none: 1). All poles are stable.
/// Right inside the band; above it the functions fall off.
[[nodiscard]] PartialFractions partialFractions(const std::vector<double>& frequencies,
                                                const std::vector<std::vector<std::complex<double>>>& values, int order,
                                                const std::vector<double>& weights = {});

/// How an input that goes straight from x0 to x1 within a step h moves y' = p y + x, and what y gathers meanwhile:
///
///     y1 = stay y0 + start x0 + end x1,   integral of y = gathered y0 + gatheredStart x0 + gatheredEnd x1.
///
/// Exact (variation of constants).
struct StraightStep {
    std::complex<double> stay, start, end, gathered, gatheredStart, gatheredEnd;
    StraightStep(std::complex<double> pole, double step) noexcept;
};

}  // namespace analysis
