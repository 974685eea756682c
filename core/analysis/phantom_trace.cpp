// SPDX-License-Identifier: GPL-3.0-or-later
// What the output does when the phantom supply is switched on.
#include <algorithm>

#include "analysis/direct_current.h"
#include "analysis/step.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

constexpr const char* method =
    "step of the supply behind its two resistors, each leg less half of the microphone's current in its own: linear, "
    "small-signal permeability, the microphone drawing its current at once and a floating resistance otherwise; feeds "
    "and mismatch by IEC 61938";

/// The hook-up with the fed port's own network floating and one more port, last, that holds the supply: per volt of it
/// the EMF behind each resistor is 1 - R I / (2 U) (a centre tap: 1 - R I / (2 U), R / 2 with the whole current).
network::Circuit withSupply(const TraceContext& context, const design::PhantomFeed& phantom, int fed, bool swap) {
    design::HookUp hookUp = context.solved.hookUp;
    for (auto& use : hookUp.ports)
        if (use.port == phantom.port) use.earthing = design::Earthing::Floating;
    network::Circuit circuit = circuitOf(context.design, hookUp, context.stages, context.stages.cut);
    const auto supply = phantomSupply(phantom, context.solved, fed, swap);
    network::CircuitPort port;
    port.name = "phantom supply";
    port.common = true;
    for (const auto& feed : supply.feeds) {
        network::LumpedBranch branch;
        branch.ends = {network::earth, feed.node};
        branch.element.resistance = feed.resistance;
        port.through.push_back(static_cast<int>(circuit.lumped.size()));
        const double drawn = phantom.current / static_cast<double>(supply.feeds.size());
        port.emfShare.push_back(1 - feed.resistance * drawn / feed.voltage);
        circuit.lumped.push_back(std::move(branch));
    }
    port.plus = supply.feeds.front().node;
    port.minus = supply.feeds.size() > 1 ? supply.feeds.back().node : network::earth;
    circuit.ports.push_back(std::move(port));
    return circuit;
}

/// Index of the fed port, or -1.
int fedPort(const TraceContext& context) {
    if (!context.design.conditions.phantom || !(context.design.conditions.phantom->voltage > 0)) return -1;
    const auto& ports = context.solved.network.circuit().ports;
    const auto at = std::find_if(ports.begin(), ports.end(),
                                 [&](const auto& p) { return p.name == context.design.conditions.phantom->port; });
    return at == ports.end() ? -1 : static_cast<int>(at - ports.begin());
}

std::vector<double> outputOverTime(const TraceContext& context, const design::PhantomFeed& phantom, int fed, bool swap,
                                   const std::vector<double>& times) {
    constexpr double tolerance = 1e-3;
    constexpr int mostSolves = 600;
    const network::Prepared network(withSupply(context, phantom, fed, swap), network::Prepared::Currents::LoopsAndTree);
    const int supply = static_cast<int>(network.circuit().ports.size()) - 1;
    const int output = network.layout().voltage(supply, context.solved.observed());
    const auto sweep = network::Sweep::over(network, lowestFrequency, highestFrequency, tolerance, mostSolves, {});
    const auto real = [&](double f) {
        return (sweep.carries() ? sweep.value(f, output) : network.solve(f)(output)).real();
    };
    const StepResponse step(real, lowestFrequency, highestFrequency);
    std::vector<double> volts(times.size());
    network::inParallel(times.size(), [&](std::size_t i) { volts[i] = phantom.voltage * step.at(times[i]); });
    return volts;
}

}  // namespace

std::shared_ptr<const Trace> phantomTrace(const TraceContext& context) {
    const int fed = fedPort(context), observed = context.solved.observed();
    if (fed < 0 || observed < 0) return nullptr;
    const auto& phantom = *context.design.conditions.phantom;
    const auto& ports = context.solved.network.circuit().ports;
    Trace trace = startTrace(
        context, "phantom_on", {"time_s", "time", units::Kind::Time, "s", true}, logarithmicGrid(1e-5, 1, 300),
        {ports[static_cast<std::size_t>(fed)].name, ports[static_cast<std::size_t>(observed)].name}, method);
    const auto add = [&](const char* name, const char* label, bool swap) {
        trace.curves.push_back({name,
                                label,
                                units::Kind::Voltage,
                                "V",
                                outputOverTime(context, phantom, fed, swap, trace.frequency),
                                false,
                                {}});
    };
    add("output", "larger resistor in the first leg", false);
    if (phantom.centreTap.empty()) add("output_swapped", "larger resistor in the second leg", true);
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
