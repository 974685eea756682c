// SPDX-License-Identifier: GPL-3.0-or-later
// What direct current does to a hook-up, and what a shorted leg of its phantom supply leaves behind.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "analysis/direct_current.h"
#include "analysis/distortion.h"
#include "analysis/figure_making.h"
#include "magnetics/bias.h"
#include "network/ladders.h"
#include "units/text.h"

namespace analysis {

namespace {

constexpr double askedFrequency = 20;  // Hz
constexpr double faintFlux = 1e-6;     // T: small signal
constexpr double fallOfSweep = 0.9;    // a half cycle
constexpr const char* circuitSource =
    "nodal analysis of the hook-up's resistances, IEC 61938 feeds with their mismatch";
constexpr const char* loopSource = "static loop of the stack with its joints, after the shorted leg's direct field";

double peakField(const Cycle& cycle) {
    const auto [low, high] = std::minmax_element(cycle.fields.begin(), cycle.fields.end());
    return std::max(*high, -*low);
}

/// Level at 20 Hz, dBu, that drives the demagnetised core to a peak field of N I / l; infinite if none does.
double levelForField(LargeSignal& large, double field) {
    large.demagnetise();
    const auto linear = large.linear(askedFrequency);
    double low = 1e-6, high = 1e4;  // V of EMF
    const auto reaches = [&](double emf) { return peakField(large.at(linear, emf).cycle) >= field; };
    if (!reaches(high)) return std::numeric_limits<double>::infinity();
    for (int round = 0; round < 24 && high > 1.01 * low; ++round) {
        const double middle = std::sqrt(low * high);
        (reaches(middle) ? high : low) = middle;
    }
    return large.at(linear, high).level;
}

void addPhantomFigures(const HookUpContext& context, const DirectState& state, LargeSignal* large,
                       std::vector<units::Figure>& figures) {
    const std::string port = context.design.conditions.phantom->port;
    const auto add = [&](const char* name, double value, const char* unit, double uncertainty, const char* source) {
        figures.push_back(hookUpFigure(context, name, value, unit, uncertainty, source, {port}));
    };
    const double turns = state.turns != 0 ? state.turns : std::numeric_limits<double>::quiet_NaN();
    add("phantom_current", std::abs(state.phantom / turns), "A", 0.05, circuitSource);
    add("phantom_short_current", std::abs(state.shorted / turns), "A", 0.05, circuitSource);
    const auto& loop = *context.stages.loop;
    const auto& core = *context.stages.core;
    auto memory = loop.atRest();
    const double left = magnetics::remanence(loop, memory, state.shorted / core.pathLength);
    add("remanence_after_short", std::abs(left), "T", 0.3, loopSource);
    const auto minor = magnetics::incremental(loop, memory, 0, faintFlux);
    add("inductance_after_short", state.turns * state.turns * core.area / core.pathLength * minor.slope, "H", 0.3,
        loopSource);
    if (large == nullptr) return;
    const double needed = magnetics::demagnetisingField(loop, memory, fallOfSweep);
    add("demagnetising_level", levelForField(*large, needed), "dBu", 3,
        "least 20 Hz alternation, falling by a tenth a half cycle, that leaves a thousandth of the remanence");
}

}  // namespace

void addDirectFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto& conditions = context.design.conditions;
    if (conditions.directCurrents.empty() && !conditions.phantom) return;
    const DirectState state = directState(context.design, context.solved);
    std::optional<LargeSignal> large;
    if (drivesCore(context.solved)) large.emplace(context.design, context.solved, context.stages, false);
    if (large && state.inService() != 0) {
        const auto& circuit = context.solved.network.circuit();
        const auto& port = circuit.ports[static_cast<std::size_t>(large->driven())];
        const double turns = network::portTurns(circuit, network::ladders(circuit), large->driven());
        const auto linear = large->linear(askedFrequency);
        const Driven now = large->at(linear, LargeSignal::emfForLevel(linear, context.design.brief.operatingLevel));
        const double nothing = std::numeric_limits<double>::quiet_NaN();
        figures.push_back(hookUpFigure(context, "inductance_20Hz_direct",
                                       now.cycle.settled ? turns * turns * now.inductance : nothing, "H", 0.3,
                                       "flux over ampere-turns at the operating level with the direct current, by "
                                       "harmonic balance of the core's loop",
                                       {port.name}));
        figures.push_back(hookUpFigure(context, "second_harmonic_20Hz", now.cycle.settled ? now.harmonics[0] : nothing,
                                       "dB", 6,
                                       "at the operating level with the direct current, by harmonic balance of the "
                                       "core's loop",
                                       {port.name}));
    }
    if (state.fed) addPhantomFigures(context, state, large ? &*large : nullptr, figures);
}

}  // namespace analysis
