// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/permeability.h"

#include <cmath>
#include <numbers>

namespace magnetics {

double skinDepth(double frequency, double permeability, double resistivity) noexcept {
    return std::sqrt(resistivity / (std::numbers::pi * frequency * mu0 * permeability));
}

std::complex<double> sheetPermeability(double frequency, double initialPermeability, double resistivity,
                                       double thickness) noexcept {
    const double x = thickness * std::sqrt(std::numbers::pi * frequency * mu0 * initialPermeability / resistivity);
    const double u = x * x / 2;  // theta^2 = j u
    if (u < 0.01) {              // power series: the closed form loses the small imaginary part to cancellation
        const double real = 1 - u * u * (2.0 / 15 - u * u * 62.0 / 2835);
        const double imaginary = u * (1.0 / 3 - u * u * (17.0 / 315 - u * u * 1382.0 / 155925));
        return {initialPermeability * real, -initialPermeability * imaginary};
    }
    // tanh(theta)/theta in real terms, numerator and denominator divided by e^x / 2 so that nothing overflows.
    const double decay = std::exp(-x);
    const double sinhX = 1 - decay * decay;
    const double coshX = 1 + decay * decay;
    const double sine = 2 * decay * std::sin(x);
    const double scale = initialPermeability / (x * (coshX + 2 * decay * std::cos(x)));
    return {scale * (sinhX + sine), -scale * (sinhX - sine)};
}

double eddyCorner(double initialPermeability, double resistivity, double thickness) noexcept {
    return 4 * resistivity / (std::numbers::pi * mu0 * initialPermeability * thickness * thickness);
}

double classicalEddyLoss(double peakFlux, double frequency, double thickness, double resistivity) noexcept {
    const double product = std::numbers::pi * peakFlux * frequency * thickness;
    return product * product / (6 * resistivity);
}

}  // namespace magnetics
