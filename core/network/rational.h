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
/// Y. Nakatsukasa, O. Sete, L. N. Trefethen, "The AAA algorithm for rational approximation", SIAM J. Sci. Comput. 40
/// (2018) (from memory): supports are added where the fit is worst, weights make the linearised residual least. Here
/// rows are scaled to relative error, and new frequencies are solved where two successive fits disagree most.
class Rational {
public:
    /// Solves as few frequencies between `from` and `to` as make the interpolant agree with newly solved ones to
    /// `tolerance` (relative to each output). If that is not reached within `mostSolves`, `converged()` is false.
    static Rational fit(const std::function<ComplexVector(double)>& solve, double from, double to, double tolerance,
                        int mostSolves, const std::stop_token& stop);

    [[nodiscard]] ComplexVector value(double frequency) const;
    /// One output alone.
    [[nodiscard]] Complex value(double frequency, int output) const;
    /// d value / d frequency, 1/Hz.
    [[nodiscard]] ComplexVector slope(double frequency) const;
    [[nodiscard]] bool converged() const noexcept { return converged_; }
    [[nodiscard]] double error() const noexcept {
        return error_;
    }  ///< greatest relative deviation at the frequencies last tried
    [[nodiscard]] int solves() const noexcept { return static_cast<int>(samples_.size()); }

private:
    struct Sample {
        double frequency;
        ComplexVector value;
        bool support = false;
    };
    void add(double frequency, ComplexVector value);
    void useAsSupport(std::size_t sample);
    void weigh();
    void refine(double tolerance);
    [[nodiscard]] std::vector<double> doubtful(std::size_t most) const;
    [[nodiscard]] double deviation(const Sample& sample) const;
    [[nodiscard]] ComplexVector valueWith(const ComplexVector& weights, double frequency) const;

    std::vector<Sample> samples_;  // rising in frequency
    std::vector<double> support_;
    ComplexMatrix supportValue_;     // outputs x supports
    ComplexVector weight_, before_;  // now, and with one support less
    bool converged_ = false;
    double error_ = 0;
};

}  // namespace network
