// SPDX-License-Identifier: GPL-3.0-or-later
// Noise at the observed port against frequency, and noise figure against the source's resistance.
#include <cmath>

#include "analysis/noise_view.h"
#include "analysis/trace_making.h"

namespace analysis {

std::shared_ptr<const Trace> noiseTrace(const TraceContext& context) {
    const auto view = NoiseView::of(context.design, context.solved);
    if (!view) return nullptr;
    Trace trace = startTrace(context, "noise", view->ports(), view->source());
    Curve density{"output_V_per_rtHz", "output noise", units::Kind::VoltageNoise, "V/rtHz", {}, true, {}};
    Curve figure{"noise_figure_dB", "noise figure", units::Kind::Decibel, "dB", {}, false, {}};
    for (const double f : context.frequencies) {
        density.y.push_back(view->density(f));
        figure.y.push_back(view->figure(f));
    }
    trace.curves = {density, figure};
    // Further ports, each as quiet as what hangs on it.
    const auto& ports = context.solved.network.circuit().ports;
    for (int p = 0; p < static_cast<int>(ports.size()); ++p) {
        if (p == context.solved.driven() || p == context.solved.observed()) continue;
        const std::string& name = ports[static_cast<std::size_t>(p)].name;
        trace.ports.push_back(name);
        Curve other{name + "_V_per_rtHz", "noise at " + name, density.kind, density.unit, {}, true, {}};
        for (const double f : context.frequencies) other.y.push_back(view->densityAt(p, f));
        trace.curves.push_back(std::move(other));
    }
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> noiseSourceTrace(const TraceContext& context) {
    const auto view = NoiseView::of(context.design, context.solved);
    if (!view) return nullptr;
    const double own =
        network::throughImpedance(context.solved.network.circuit(), context.solved.driven(), 1000).real();
    if (!(own > 0)) return nullptr;
    // Two decades below and above the source of the hook-up, ten steps a decade, itself in the middle.
    constexpr int steps = 40;
    std::vector<double> ohms;
    for (int k = 0; k <= steps; ++k) ohms.push_back(own * std::pow(10.0, 4.0 * k / steps - 2));
    Trace trace =
        startTrace(context, "noise_source", {"source_ohm", "source resistance", units::Kind::Resistance, "ohm", true},
                   ohms, view->ports(), view->source() + ", at 1 kHz");
    Curve figure{"noise_figure_dB", "noise figure", units::Kind::Decibel, "dB", {}, false, {}};
    figure.y = view->figuresFor(ohms, 1000);
    trace.curves = {figure};
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
