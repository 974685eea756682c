// SPDX-License-Identifier: GPL-3.0-or-later
// Response from source EMF to the observed port and to every other one.
#include <cmath>
#include <numbers>

#include "analysis/trace_making.h"

namespace analysis {

namespace {

Curve magnitudeCurve() {
    return {"magnitude_dB", "response", units::Kind::Decibel, "dB", {}, false, {}};
}
struct ResponseCurves {
    Curve magnitude = magnitudeCurve();
    Curve phase{"phase_deg", "phase", units::Kind::Angle, "deg", {}, false, {}};
    Curve delay{"group_delay_s", "group delay", units::Kind::Time, "s", {}, false, {}};
};

double levelOf(std::complex<double> value) {
    return 20 * std::log10(std::abs(value));
}

constexpr const char* responseSource = "level at the port re source EMF, network solved in branch currents";

/// Phase is unwrapped by adding the delay's own prediction, so that a coarse grid does not lose turns.
void append(ResponseCurves& curves, double before, double frequency, std::complex<double> value,
            std::complex<double> slope) {
    const double delay = -(slope / value).imag() / (2 * std::numbers::pi);
    double phase = std::arg(value) * 180 / std::numbers::pi;
    if (!curves.phase.y.empty()) {
        const double step = -360 * (frequency - before) * (delay + curves.delay.y.back()) / 2;
        const double expected = curves.phase.y.back() + step;
        phase += 360 * std::round((expected - phase) / 360);
    }
    curves.magnitude.y.push_back(levelOf(value));
    curves.phase.y.push_back(phase);
    curves.delay.y.push_back(delay);
}

}  // namespace

std::shared_ptr<const Trace> responseLevelTrace(const TraceContext& context) {
    const int driven = context.solved.driven(), observed = context.solved.observed();
    if (driven < 0 || observed < 0) return responseTrace(context);
    const auto& ports = context.solved.network.circuit().ports;
    const int output = context.solved.network.layout().voltage(driven, observed);
    Curve level = magnitudeCurve();
    level.y.reserve(context.frequencies.size());
    for (const double f : context.frequencies) level.y.push_back(levelOf(context.solved.at(f, output)));
    Trace trace = startTrace(
        context, "response",
        {ports[static_cast<std::size_t>(driven)].name, ports[static_cast<std::size_t>(observed)].name}, responseSource);
    trace.curves.push_back(std::move(level));
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> responseTrace(const TraceContext& context) {
    const int driven = context.solved.driven();
    if (driven < 0) return nullptr;
    const auto& ports = context.solved.network.circuit().ports;
    const auto layout = context.solved.network.layout();
    std::vector<int> order;
    if (context.solved.observed() >= 0) order.push_back(context.solved.observed());
    for (int p = 0; p < static_cast<int>(ports.size()); ++p)
        if (p != driven && p != context.solved.observed()) order.push_back(p);
    std::vector<ResponseCurves> curves(order.size());
    double before = 0;
    for (const double f : context.frequencies) {
        const auto value = context.solved.at(f), slope = context.solved.slopeAt(f);
        for (std::size_t k = 0; k < order.size(); ++k)
            append(curves[k], before, f, value(layout.voltage(driven, order[k])),
                   slope(layout.voltage(driven, order[k])));
        before = f;
    }
    std::vector<std::string> names{ports[static_cast<std::size_t>(driven)].name};
    for (const int p : order) names.push_back(ports[static_cast<std::size_t>(p)].name);
    Trace trace = startTrace(context, "response", names, responseSource);
    for (std::size_t k = 0; k < order.size(); ++k) {
        const std::string port = ports[static_cast<std::size_t>(order[k])].name;
        for (Curve* curve : {&curves[k].magnitude, &curves[k].phase, &curves[k].delay}) {
            if (k > 0 || context.solved.observed() < 0) {
                curve->name = port + "_" + curve->name;
                curve->label += " " + port;
            }
            trace.curves.push_back(std::move(*curve));
        }
    }
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
