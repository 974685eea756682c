// SPDX-License-Identifier: GPL-3.0-or-later
// Thermal noise at the observed port against frequency.
#include <cmath>

#include "analysis/noise.h"
#include "analysis/trace_making.h"

namespace analysis {

std::shared_ptr<const Trace> noiseTrace(const TraceContext& context) {
    const int driven = context.solved.driven(), observed = context.solved.observed();
    const auto& c = context.solved.network.circuit();
    if (driven < 0 || observed < 0 || c.ports[static_cast<std::size_t>(driven)].common) return nullptr;
    const auto layout = context.solved.network.layout();
    Trace trace =
        startTrace(context, "noise",
                   {c.ports[static_cast<std::size_t>(driven)].name, c.ports[static_cast<std::size_t>(observed)].name},
                   "4 k T Re Z at the observed terminals (Nyquist), all parts at one temperature, no amplifier");
    Curve density{"output_V_per_rtHz", "output noise", units::Kind::Voltage, "V/rtHz", {}, true, {}};
    Curve figure{"noise_figure_dB", "noise figure", units::Kind::Decibel, "dB", {}, false, {}};
    const double kelvin = context.design.conditions.temperature + 273.15;
    for (const double f : context.frequencies) {
        const auto values = context.solved.at(f);
        const double resistance = std::max(0.0, values(layout.totalImpedance(observed)).real());
        density.y.push_back(thermalNoise(resistance, kelvin));
        const network::Complex own = network::throughImpedance(c, driven, f);
        figure.y.push_back(
            passiveNoiseFigure(resistance, kelvin, own.real(), std::abs(values(layout.voltage(driven, observed)))));
    }
    trace.curves = {density, figure};
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
