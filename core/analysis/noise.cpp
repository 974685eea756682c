// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/noise.h"

#include <cmath>

#include "analysis/figure_making.h"
#include "units/text.h"

namespace analysis {

double thermalNoise(double resistance, double kelvin) noexcept {
    return std::sqrt(4 * boltzmann * kelvin * resistance);
}

double passiveNoiseFigure(double outputResistance, double kelvin, double sourceOhm, double gain) noexcept {
    constexpr double reference = 290;
    return 10 * std::log10(kelvin * outputResistance / (reference * sourceOhm * gain * gain));
}

void addNoiseFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const int driven = context.solved.driven(), observed = context.solved.observed();
    const auto& c = context.solved.network.circuit();
    if (driven < 0 || observed < 0 || c.ports[static_cast<std::size_t>(driven)].common) return;
    const auto layout = context.solved.network.layout();
    const double kelvin = context.design.conditions.temperature + 273.15;
    const auto density = [&](double f) {
        return thermalNoise(std::max(0.0, context.solved.at(f, layout.totalImpedance(observed)).real()), kelvin);
    };
    // Trapezoid over log f, 20 Hz to 20 kHz: integral of e^2 df.
    double sum = 0;
    constexpr int steps = 120;
    for (int k = 0; k <= steps; ++k) {
        const double f = 20 * std::pow(1000.0, double(k) / steps);
        const double e = density(f);
        sum += (k == 0 || k == steps ? 0.5 : 1) * e * e * f * std::log(1000.0) / steps;
    }
    const std::vector<std::string> ports{c.ports[static_cast<std::size_t>(driven)].name,
                                         c.ports[static_cast<std::size_t>(observed)].name};
    const char* source = "4 k T Re Z at the observed terminals (Nyquist), all parts at one temperature, no amplifier";
    figures.push_back(
        hookUpFigure(context, "output_noise_20kHz", units::dbuOfVolts(std::sqrt(sum)), "dBu", 0.5, source, ports));
    const network::Complex own = network::throughImpedance(c, driven, 1000);
    if (!(own.real() > 0)) return;
    const auto outputs = context.solved.at(1000);
    figures.push_back(hookUpFigure(context, "noise_figure_1kHz",
                                   passiveNoiseFigure(outputs(layout.totalImpedance(observed)).real(), kelvin,
                                                      own.real(), std::abs(outputs(layout.voltage(driven, observed)))),
                                   "dB", 0.2, source, ports));
}

}  // namespace analysis
