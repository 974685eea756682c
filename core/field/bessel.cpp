// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/bessel.h"

#include <cmath>

namespace field {
namespace {

using Complex = std::complex<double>;
constexpr double asymptoticFrom = 80;

/// J_order(z) / J_(order-1)(z). What is left out at order m is some (e |z| / 2 m)^(2 m): nothing 12 terms beyond 1.4
/// |z|. The quotient is formed by hand: the operands are of one size, and std's care for overflow takes most of the
/// time.
Complex fraction(Complex z, int order) {
    const int last = order + 12 + static_cast<int>(1.4 * std::abs(z));
    Complex tail = 0;
    for (int k = last; k >= order; --k) {
        const double re = 2.0 * k - (z.real() * tail.real() - z.imag() * tail.imag());
        const double im = -(z.real() * tail.imag() + z.imag() * tail.real());
        const double size = re * re + im * im;
        tail = {(z.real() * re + z.imag() * im) / size, (z.imag() * re - z.real() * im) / size};
    }
    return tail;
}

/// Sum of j^k a_k(order) / z^k, the amplitude of the Hankel function that rules for Im z < 0.
Complex hankelAmplitude(Complex z, int order) {
    Complex sum = 1, term = 1;
    for (int k = 1; k <= 12; ++k) {
        const double odd = 2 * k - 1;
        term *= Complex(0, 1) * (4.0 * order * order - odd * odd) / (8.0 * k * z);
        sum += term;
    }
    return sum;
}

}  // namespace

Complex besselRatio10(Complex z) {
    if (std::abs(z) < asymptoticFrom) return fraction(z, 1);
    return Complex(0, -1) * hankelAmplitude(z, 1) / hankelAmplitude(z, 0);
}

Complex besselRatio20(Complex z) {
    if (std::abs(z) < asymptoticFrom) return fraction(z, 1) * fraction(z, 2);
    return 2.0 * besselRatio10(z) / z - 1.0;
}

}  // namespace field
