// SPDX-License-Identifier: GPL-3.0-or-later
// Step and square wave at the observed port.
#include "analysis/step.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

constexpr const char* timeSource =
    "inverse transform of the linear network's response from source EMF, parabolas between frequencies (0.1 %); small "
    "signal, nothing above 1 MHz";

std::vector<std::string> portsOf(const TraceContext& context) {
    const auto& ports = context.solved.network.circuit().ports;
    return {ports[static_cast<std::size_t>(context.solved.driven())].name,
            ports[static_cast<std::size_t>(context.solved.observed())].name};
}

bool hasResponse(const TraceContext& context) {
    return context.solved.driven() >= 0 && context.solved.observed() >= 0;
}

network::Complex transfer(const TraceContext& context, double frequency) {
    return context.solved.at(
        frequency, context.solved.network.layout().voltage(context.solved.driven(), context.solved.observed()));
}

}  // namespace

std::shared_ptr<const Trace> stepTrace(const TraceContext& context) {
    if (!hasResponse(context)) return nullptr;
    const StepResponse step([&](double f) { return transfer(context, f).real(); }, lowestFrequency, highestFrequency);
    Trace trace = startTrace(context, "step", {"time_s", "time", units::Kind::Time, "s", true},
                             logarithmicGrid(1e-6, 1, 600), portsOf(context), timeSource);
    Curve output{"output", "output", units::Kind::Voltage, "V", std::vector<double>(trace.frequency.size()), false, {}};
    network::inParallel(output.y.size(), [&](std::size_t i) { output.y[i] = step.at(trace.frequency[i]); });
    trace.curves = {output};
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> squareTrace(const TraceContext& context) {
    if (!hasResponse(context)) return nullptr;
    constexpr int count = 512;
    std::vector<double> share;
    share.reserve(count);
    for (int n = 0; n < count; ++n) share.push_back(double(n) / count);
    Trace trace = startTrace(context, "square", {"period_share", "share of the period", units::Kind::Number, "", false},
                             share, portsOf(context), timeSource);
    const auto add = [&](const char* name, const char* label, double frequency) {
        const auto at = [&](double f) { return transfer(context, f); };
        trace.curves.push_back({name,
                                label,
                                units::Kind::Voltage,
                                "V",
                                squareResponse(at, frequency, highestFrequency, count),
                                false,
                                {}});
    };
    add("at_100Hz", "100 Hz", 100);
    add("at_1kHz", "1 kHz", 1000);
    add("at_10kHz", "10 kHz", 10e3);
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
