// SPDX-License-Identifier: GPL-3.0-or-later
// One cycle of a periodic state, in time and in harmonics.
#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <complex>
#include <vector>

namespace analysis {

/// Samples of one cycle and the harmonics that are sought of it: coefficients X_k of  x(t) = sum_k X_k exp(j k w t),
/// X_-k the conjugate, packed as real and imaginary part of each kind in a row. Without even harmonics the second half
/// of a cycle is the first with the other sign, of factors with the same, and is not looked at.
class OneCycle {
public:
    /// Harmonics up to `highest`: 0 and all, or (`even` false) odd ones alone. `samples` is a power of two.
    OneCycle(int highest, bool even, int samples);
    [[nodiscard]] const std::vector<int>& kinds() const noexcept { return kinds_; }
    [[nodiscard]] bool even() const noexcept { return even_; }
    [[nodiscard]] Eigen::Index unknowns() const noexcept { return 2 * static_cast<Eigen::Index>(kinds_.size()); }
    [[nodiscard]] std::size_t samples() const noexcept { return turn_.size(); }
    [[nodiscard]] std::vector<double> inTime(const Eigen::Ref<const Eigen::VectorXd>& packed) const;
    [[nodiscard]] std::complex<double> coefficient(const std::vector<double>& values, std::size_t k) const;
    /// A coefficient of each kind.
    [[nodiscard]] std::vector<std::complex<double>> coefficients(const std::vector<double>& values) const;
    [[nodiscard]] Eigen::VectorXd packed(const std::vector<double>& values) const;
    /// What makes the value at one sample of packed coefficients.
    [[nodiscard]] Eigen::RowVectorXd sampling(std::size_t sample) const;
    /// What multiplying with a factor that varies in time does to packed coefficients. The mean's imaginary part, which
    /// there is none of, stays out.
    [[nodiscard]] Eigen::MatrixXd multiplier(const std::vector<double>& factor) const;
    /// Multiplies a matrix's rows as packed coefficients, each kind with its own number.
    template <class Factor>
    void turnRows(Eigen::MatrixXd& matrix, const Factor& factorOf) const {
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            const std::complex<double> factor = factorOf(static_cast<std::size_t>(kinds_[i]));
            const auto row = 2 * static_cast<Eigen::Index>(i);
            const Eigen::RowVectorXd real = matrix.row(row);
            matrix.row(row) = factor.real() * real - factor.imag() * matrix.row(row + 1);
            matrix.row(row + 1) = factor.imag() * real + factor.real() * matrix.row(row + 1);
        }
    }

private:
    std::vector<std::complex<double>> turn_;  // exp(j 2 pi n / samples)
    bool even_;
    std::vector<int> kinds_;
};

/// What follows a wave, over one cycle.
struct Followed {
    std::vector<double> flux, field, slope;
};

/// Where it stands after a step: flux density, field and the slope of one against the other.
struct FollowedPlace {
    double flux, field, slope;
};

/// Leads `go`, which follows a wave from where it stands to a sample, once round in the steady state: from the farthest
/// excursion (where even harmonics are, both extremes first: what a past has left is closed by them).
template <class Go>
Followed onceRound(const std::vector<double>& wave, bool even, const Go& go) {
    const std::size_t count = wave.size();
    Followed made{std::vector<double>(count), std::vector<double>(count), std::vector<double>(count)};
    const auto farthest =
        std::max_element(wave.begin(), wave.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    const auto first = static_cast<std::size_t>(farthest - wave.begin());
    if (even) {
        go(first);
        const auto [lowest, highest] = std::minmax_element(wave.begin(), wave.end());
        go(static_cast<std::size_t>((wave[first] > 0 ? lowest : highest) - wave.begin()));
    }
    // Odd harmonics alone: the second half of the cycle is the first with the other sign.
    for (std::size_t i = 0; i < (even ? count : count / 2); ++i) {
        const std::size_t n = (first + i) % count;
        const FollowedPlace place = go(n);
        made.flux[n] = place.flux;
        made.field[n] = place.field;
        made.slope[n] = place.slope;
        if (even) continue;
        const std::size_t opposite = (n + count / 2) % count;
        made.flux[opposite] = -place.flux;
        made.field[opposite] = -place.field;
        made.slope[opposite] = place.slope;
    }
    return made;
}

}  // namespace analysis
