// SPDX-License-Identifier: GPL-3.0-or-later
// Responses over time of the linear network.
#pragma once

#include <complex>
#include <functional>
#include <vector>

namespace analysis {

/// Response to a unit step at t = 0 of a causal network, from the real part of its transfer function:
///
///     s(t) = (2/pi) integral_0^infinity Re H(w) sin(w t) / w dw
///
/// (any text on Fourier integrals). Re H / w is taken as parabolas between frequencies, set as close as half of
/// `tolerance` wants, and the integral of each piece is exact (L. N. G. Filon, Proc. Royal Soc. Edinburgh 49, 1928,
/// from memory). Below the lowest frequency Re H goes as a constant and a square; above the highest it falls with
/// 1/f^2: right for times from some 1/(3 highest).
class StepResponse {
public:
    /// `real`: Re H at a frequency, Hz.
    StepResponse(const std::function<double(double)>& real, double lowest, double highest, double tolerance = 1e-4);
    [[nodiscard]] double at(double time) const;

private:
    /// value + slope u + bend u^2 with u from -1 to 1 between middle -+ half, rad/s; times `half`.
    struct Piece {
        double middle, half, value, slope, bend;
    };
    std::vector<Piece> pieces_;
    double lowest_ = 0;                 // rad/s
    double constant_ = 0, square_ = 0;  // of Re H below it
};

/// One period of the steady response to a square wave between -1 and 1, at `count` equal steps: the sum of odd
/// harmonics 4 / (pi k) H(k f) up to `highest` Hz with Lanczos's factors (from memory).
[[nodiscard]] std::vector<double> squareResponse(const std::function<std::complex<double>(double)>& transfer,
                                                 double frequency, double highest, int count);

/// Si(x) = integral_0^x sin(t)/t dt, x >= 0; `sine`, `cosine` of x. M. Abramowitz and I. Stegun, Handbook of
/// Mathematical Functions, 5.2.38/39 (from memory), error below 1e-6.
[[nodiscard]] double sineIntegral(double x, double sine, double cosine) noexcept;

}  // namespace analysis
