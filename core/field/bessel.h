// SPDX-License-Identifier: GPL-3.0-or-later
// Ratios of Bessel functions of complex argument, as they occur in round conductors.
#pragma once

#include <complex>

namespace field {

/// J1(z)/J0(z) for z = (1 - j) t, t >= 0: continued fraction z/(2 - z^2/(4 - z^2/(6 - …))) (Abramowitz and Stegun,
/// Handbook of Mathematical Functions, 9.1.73: from memory, derived again from the recurrence), from 80 on the
/// asymptotic series of the Hankel functions. Relative error below 1e-12.
[[nodiscard]] std::complex<double> besselRatio10(std::complex<double> z);

/// J2(z)/J0(z) for the same z, without cancellation at small z.
[[nodiscard]] std::complex<double> besselRatio20(std::complex<double> z);

}  // namespace field
