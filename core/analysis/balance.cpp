// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/balance.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "analysis/figure_making.h"
#include "analysis/most_rejection.h"
#include "analysis/trace_making.h"
#include "network/nodes.h"

namespace analysis {

double rejectionDecibels(network::Complex wanted, network::Complex unwanted) noexcept {
    constexpr double nothing = 300;
    const double ratio = std::abs(wanted) / std::abs(unwanted);
    return std::isfinite(ratio) ? std::min(nothing, 20 * std::log10(ratio)) : nothing;
}

Rejection rejectionOf(const network::Legs& legs, double ohm) {
    Rejection r;
    r.balanced = r.unequal = rejectionDecibels(legs.differential, legs.common);
    r.output = std::numeric_limits<double>::quiet_NaN();
    if (legs.outputTerminals.size() == 2)
        r.output = rejectionDecibels(legs.outputTerminals(0) - legs.outputTerminals(1), legs.outputTerminals.mean());
    for (int k = 0; k < 2; ++k) {
        network::ComplexVector added = network::ComplexVector::Zero(2);
        added(k) = ohm;
        const auto other = network::withAdded(legs, added);
        const double now = rejectionDecibels(other.differential, other.common);
        r.unequal = k == 0 ? now : std::min(r.unequal, now);
    }
    return r;
}

std::optional<CommonModeTest> CommonModeTest::of(const design::Design& design, const Solved& solved,
                                                 const Answer::Stages& stages, network::Prepared::Currents currents) {
    const int driven = solved.driven(), observed = solved.observed();
    if (driven < 0 || observed < 0) return {};
    const auto& own = solved.network.circuit().ports[static_cast<std::size_t>(driven)];
    if (std::abs(network::throughImpedance(solved.network.circuit(), driven, 1000)) == 0) return {};
    network::Circuit circuit = solved.network.circuit();
    if (own.through.size() != 2) {
        design::HookUp test = solved.hookUp;
        for (auto& use : test.ports)
            if (use.port == own.name) use.earthing = design::Earthing::Balanced;
        const auto* ends = design::port(design, own.name);
        network::Nodes nodes(design, test);
        if (ends == nullptr || nodes.index(ends->plus) == network::earth || nodes.index(ends->minus) == network::earth)
            return {};
        circuit = circuitOf(design, test, stages, stages.cut);
    }
    auto& port = circuit.ports[static_cast<std::size_t>(driven)];
    if (port.through.size() != 2 || port.plus == network::earth || port.minus == network::earth) return {};
    port.common = false;
    port.emfShare = {0.5, -0.5};
    network::Prepared network(network::withLegPorts(std::move(circuit), driven, observed), currents);
    return CommonModeTest(std::move(network), driven, observed);
}

Rejection CommonModeTest::read(const network::ComplexVector& outputs, double frequency) const {
    return rejectionOf(network::legs(network_.circuit(), outputs, driven_, observed_, frequency));
}

Rejection CommonModeTest::at(double frequency) const {
    return read(network_.solve(frequency), frequency);
}

std::vector<Rejection> CommonModeTest::over(const std::vector<double>& frequencies, const std::stop_token& stop) const {
    constexpr double tolerance = 5e-3;
    constexpr int mostSolves = 600;
    const auto sweep = network::Sweep::over(network_, lowestFrequency, highestFrequency, tolerance, mostSolves, stop);
    std::vector<Rejection> all;
    all.reserve(frequencies.size());
    for (const double f : frequencies) {
        if (stop.stop_requested()) break;
        const bool inside = sweep.carries() && f >= lowestFrequency && f <= highestFrequency;
        all.push_back(inside ? read(sweep.value(f), f) : at(f));
    }
    return all;
}

std::vector<std::string> CommonModeTest::ports() const {
    const auto& ports = network_.circuit().ports;
    return {ports[static_cast<std::size_t>(driven_)].name, ports[static_cast<std::size_t>(observed_)].name};
}

namespace {

const char* const method =
    "differential over common-mode gain from source EMF, half the source in each leg (IEC 60268-3, from memory)";
const char* const methodUnequal = "the same with 10 ohm more in one leg, the worse of the two";
const char* const methodOutput = "voltage between the output's terminals over their mean to earth";

}  // namespace

void addBalanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto test =
        CommonModeTest::of(context.design, context.solved, context.stages, network::Prepared::Currents::Branches);
    if (!test) return;
    const auto add = [&](const std::string& name, double decibels, const char* source) {
        auto f = hookUpFigure(context, name, std::min(decibels, mostRejection), "dB", 3, source, test->ports());
        if (decibels > mostRejection && f.valid) f.why = "over 80 dB: lead-outs and foil edges rule there";
        figures.push_back(std::move(f));
    };
    const Rejection middle = test->at(1000), top = test->at(20e3);
    add("rejection_1kHz", middle.balanced, method);
    add("rejection_20kHz", top.balanced, method);
    add("rejection_10ohm_1kHz", middle.unequal, methodUnequal);
    add("rejection_10ohm_20kHz", top.unequal, methodUnequal);
    if (std::isfinite(middle.output)) add("output_balance_1kHz", middle.output, methodOutput);
}

std::shared_ptr<const Trace> balanceTrace(const TraceContext& context) {
    const auto test =
        CommonModeTest::of(context.design, context.solved, context.stages, network::Prepared::Currents::LoopsAndTree);
    if (!test) return nullptr;
    Trace trace = startTrace(context, "balance", test->ports(),
                             std::string(method) + "; over 80 dB lead-outs and foil edges rule");
    const auto curve = [](const char* name, const char* label) {
        return Curve{name, label, units::Kind::Decibel, "dB", {}, false, {}, mostRejection};
    };
    Curve balanced = curve("rejection_dB", "rejection");
    Curve unequal = curve("rejection_10ohm_dB", "with 10 ohm in one leg");
    Curve output = curve("output_balance_dB", "balance of the output");
    for (const auto& r : test->over(context.frequencies, {})) {
        balanced.y.push_back(r.balanced);
        unequal.y.push_back(r.unequal);
        output.y.push_back(r.output);
    }
    trace.curves = {balanced, unequal};
    if (!output.y.empty() && std::isfinite(output.y.front())) trace.curves.push_back(output);
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
