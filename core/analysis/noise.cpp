// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/noise.h"

#include <algorithm>
#include <cmath>

namespace analysis {

double thermalNoise(double resistance, double kelvin) noexcept {
    return std::sqrt(4 * boltzmann * kelvin * resistance);
}

double outputNoise(std::complex<double> impedance, double kelvin, const Amplifier& amplifier) noexcept {
    const double thermal = thermalNoise(std::max(0.0, impedance.real()), kelvin);
    return std::hypot(thermal, amplifier.voltage, amplifier.current * std::abs(impedance));
}

double noiseFigure(double density, double kelvin, double sourceOhm, double gain) noexcept {
    const double own = 4 * boltzmann * sourceOhm * gain * gain;
    return 10 * std::log10(1 + (density * density - kelvin * own) / (referenceTemperature * own));
}

double bestSource(const Amplifier& amplifier) noexcept {
    return amplifier.voltage / amplifier.current;
}

double aWeighting(double frequency) noexcept {
    const auto response = [](double f) {
        const double s = f * f, top = 12194.0 * 12194.0;
        return top * s * s / ((s + 20.6 * 20.6) * (s + top) * std::sqrt((s + 107.7 * 107.7) * (s + 737.9 * 737.9)));
    };
    return response(frequency) / response(1000);
}

double bandNoise(const std::function<double(double)>& density, const std::function<double(double)>& weight) {
    const double span = std::log(noiseTo / noiseFrom);
    constexpr int steps = 120;
    double sum = 0;
    for (int k = 0; k <= steps; ++k) {
        const double f = noiseFrom * std::exp(span * k / steps);
        const double e = density(f) * weight(f);
        sum += (k == 0 || k == steps ? 0.5 : 1) * e * e * f * span / steps;
    }
    return std::sqrt(sum);
}

}  // namespace analysis
