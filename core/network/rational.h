// SPDX-License-Identifier: GPL-3.0-or-later
// A vector of responses carried between few solved frequencies by one rational function.
#pragma once

#include <functional>
#include <stop_token>
#include <vector>

#include "network/circuit.h"
#include "network/solve.h"

namespace network {

/// Barycentric rational interpolant with common weights for all outputs, in frequency (Hz):
///     r(f) = sum_k w_k y_k / (f - f_k)  /  sum_k w_k / (f - f_k)
/// Y. Nakatsukasa, O. Sete, L. N. Trefethen, "The AAA algorithm for rational approximation", SIAM J. Sci. Comput. 40 (2018)
/// (from memory), here with supports taken evenly from the solved frequencies and rows scaled to relative error.
class Rational {
public:
    /// Solves as few frequencies between `from` and `to` as make the interpolant agree with newly solved ones to `tolerance`
    /// (relative to each output). If that is not reached within `mostSolves`, `converged()` is false.
    static Rational fit(const std::function<ComplexVector(double)>& solve, double from, double to, double tolerance,
                        int mostSolves, const std::stop_token& stop);

    [[nodiscard]] ComplexVector value(double frequency) const;
    /// d value / d frequency, 1/Hz.
    [[nodiscard]] ComplexVector slope(double frequency) const;
    [[nodiscard]] bool converged() const noexcept { return converged_; }
    [[nodiscard]] double error() const noexcept { return error_; }  ///< greatest relative deviation at frequencies not fitted
    [[nodiscard]] int solves() const noexcept { return static_cast<int>(frequency_.size()); }

private:
    void add(double frequency, ComplexVector value);
    void weigh();
    bool tryWeights(std::size_t supports);
    [[nodiscard]] double deviation(double frequency, const ComplexVector& solved) const;

    std::vector<double> frequency_;      // solved, rising
    std::vector<ComplexVector> solved_;
    std::vector<double> support_;
    std::vector<ComplexVector> supportValue_;
    ComplexVector weight_;
    bool converged_ = false;
    double error_ = 0;
};

}  // namespace network
