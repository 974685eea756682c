// SPDX-License-Identifier: GPL-3.0-or-later
// Distortion against frequency and level, inductance against level, and the core's loop.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "analysis/direct_current.h"
#include "analysis/distortion.h"
#include "analysis/headroom.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"
#include "network/ladders.h"

namespace analysis {

namespace {

constexpr double lowFrequency = 20;  // Hz, where a core is asked how it distorts
constexpr const char* distortionSource =
    "harmonic balance of the network and the core's loop behind its sheets' eddy field, without what moving domain "
    "walls lose beyond; +-6 dB unless the loop was measured";

constexpr const char* staticSource =
    "harmonic balance of the network and the core's static loop; behind the sheets' eddy field it follows at once";

std::string loopSourceOf(const TraceContext& context) {
    return context.large->loop() == LoopKind::Static ? staticSource : distortionSource;
}

std::vector<std::string> portsOf(const TraceContext& context) {
    const auto& ports = context.solved.network.circuit().ports;
    return {ports[static_cast<std::size_t>(context.large->driven())].name,
            ports[static_cast<std::size_t>(context.large->observed())].name};
}

void addDoubt(Trace& trace, const std::string& why) {
    if (!why.empty()) trace.why += (trace.why.empty() ? "" : "; ") + why;
}

/// Of a trace over frequency.
void addLoopDoubts(Trace& trace, const LargeSignal& large) {
    addDoubt(trace, large.why());
    if (large.loop() != LoopKind::Static) return;
    trace.validTo = large.eddyCorner();
    addDoubt(trace, "above the sheets' eddy corner a static loop is short");
}

/// Columns of distortion for states along an axis; harmonics that are nowhere are left out.
std::vector<Curve> distortionCurves(const std::vector<Driven>& states) {
    Curve thd{"thd_percent", "distortion", units::Kind::Number, "%", {}, true, {}};
    for (const Driven& state : states)
        thd.y.push_back(state.cycle.settled ? 100 * state.thd : std::numeric_limits<double>::quiet_NaN());
    std::vector<Curve> curves{thd};
    for (int k = firstHarmonic; k <= lastHarmonic; ++k) {
        const std::string order = std::to_string(k);
        Curve curve{"h" + order + "_dB", "harmonic " + order, units::Kind::Decibel, "dB", {}, false, {}};
        for (const Driven& state : states) {
            const double level = state.harmonics[static_cast<std::size_t>(k - firstHarmonic)];
            const bool known = state.cycle.settled && std::isfinite(level);
            curve.y.push_back(known ? level : std::numeric_limits<double>::quiet_NaN());
        }
        if (std::any_of(curve.y.begin(), curve.y.end(), [](double y) { return std::isfinite(y); }))
            curves.push_back(curve);
    }
    return curves;
}

/// States at 20 Hz from 60 dB below the operating level to beyond the knee, rising in level.
std::vector<Driven> overLevel(const TraceContext& context) {
    constexpr int count = 41;
    const double operating = context.design.brief.operatingLevel;
    const auto linear = context.large->linear(lowFrequency);
    const double knee = kneeLevel(context.design, context.solved, context.stages,
                                  designKneeFlux(context.design, context.solved, context.stages), lowFrequency);
    const double top = std::isfinite(knee) ? std::max(knee + 3, operating) : operating + 40;
    const double bottom = std::min(operating, top) - 60;
    std::vector<Driven> states;
    for (int i = 0; i < count; ++i) {
        const double level = bottom + (top - bottom) * i / (count - 1);
        const Cycle* before = states.empty() ? nullptr : &states.back().cycle;
        Driven state = context.large->at(linear, LargeSignal::emfForLevel(linear, level), before);
        if (states.empty() || state.level > states.back().level) states.push_back(std::move(state));
    }
    return states;
}

/// Lowest level, dBu, at which the distortion reaches a share, between states rising in level; not a number if it
/// stays below. Straight in dB over dB.
double levelAtDistortion(const std::vector<Driven>& states, double share) {
    for (std::size_t i = 0; i < states.size(); ++i) {
        if (!states[i].cycle.settled || states[i].thd < share) continue;
        if (i == 0) return states[i].level;
        const Driven &low = states[i - 1], &high = states[i];
        return low.level + (high.level - low.level) * std::log(share / low.thd) / std::log(high.thd / low.thd);
    }
    return std::numeric_limits<double>::quiet_NaN();
}

Axis levelAxis() {
    return {"level_dBu", "level", units::Kind::LevelDbu, "dBu", false};
}

std::vector<double> levelsOf(const std::vector<Driven>& states) {
    std::vector<double> levels;
    levels.reserve(states.size());
    for (const Driven& state : states) levels.push_back(state.level);
    return levels;
}

}  // namespace

std::shared_ptr<const Trace> distortionTrace(const TraceContext& context) {
    if (!context.large) return nullptr;
    Trace trace = startTrace(context, "distortion", portsOf(context), loopSourceOf(context));
    trace.frequency = logarithmicGrid(10, 20e3, 34);
    std::vector<Driven> states(trace.frequency.size());
    network::inParallel(states.size(), [&](std::size_t i) {
        const auto linear = context.large->linear(trace.frequency[i]);
        states[i] = context.large->at(linear, LargeSignal::emfForLevel(linear, context.design.brief.operatingLevel));
    });
    trace.curves = distortionCurves(states);
    addLoopDoubts(trace, *context.large);
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> distortionLevelTrace(const TraceContext& context) {
    if (!context.large) return nullptr;
    const std::vector<Driven> states = overLevel(context);
    Trace trace =
        startTrace(context, "distortion_level", levelAxis(), levelsOf(states), portsOf(context), loopSourceOf(context));
    trace.curves = distortionCurves(states);
    addDoubt(trace, context.large->why());
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> distortionLimitTrace(const TraceContext& context) {
    if (!context.large) return nullptr;
    constexpr int levels = 11;
    constexpr double lowest = -50, stepDb = 5;  // re the knee
    const double kneeFlux = designKneeFlux(context.design, context.solved, context.stages);
    if (!std::isfinite(kneeFlux)) return nullptr;
    Trace trace =
        startTrace(context, "distortion_limit", portsOf(context),
                   std::string("level at which distortion or the stack's knee is reached, whichever first; ") +
                       loopSourceOf(context));
    trace.frequency = logarithmicGrid(10, 1000, 12);
    const std::array<double, 3> shares{0.001, 0.01, 0.03};
    trace.curves = {{"level_0.1_percent_dBu", "0.1 %", units::Kind::LevelDbu, "dBu", {}, false, {}},
                    {"level_1_percent_dBu", "1 %", units::Kind::LevelDbu, "dBu", {}, false, {}},
                    {"level_3_percent_dBu", "3 %", units::Kind::LevelDbu, "dBu", {}, false, {}}};
    for (Curve& curve : trace.curves) curve.y.resize(trace.frequency.size());
    network::inParallel(trace.frequency.size(), [&](std::size_t i) {
        const auto linear = context.large->linear(trace.frequency[i]);
        const double knee = kneeLevel(context.design, context.solved, context.stages, kneeFlux, trace.frequency[i]);
        std::vector<Driven> states;
        for (int k = 0; k < levels; ++k) {
            const double emf = LargeSignal::emfForLevel(linear, knee + lowest + k * stepDb);
            states.push_back(context.large->at(linear, emf, states.empty() ? nullptr : &states.back().cycle));
            if (!states.back().cycle.settled || states.back().thd >= shares.back()) break;
        }
        for (std::size_t c = 0; c < shares.size(); ++c) {
            const double level = levelAtDistortion(states, shares[c]);
            const bool known = std::isfinite(level) || states.back().cycle.settled;
            trace.curves[c].y[i] = known ? std::fmin(level, knee) : std::numeric_limits<double>::quiet_NaN();
        }
    });
    addLoopDoubts(trace, *context.large);
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> inductanceLevelTrace(const TraceContext& context) {
    if (!context.large) return nullptr;
    const auto& circuit = context.solved.network.circuit();
    const double turns = network::portTurns(circuit, network::ladders(circuit), context.large->driven());
    const std::vector<Driven> states = overLevel(context);
    Trace trace =
        startTrace(context, "inductance_level", levelAxis(), levelsOf(states), portsOf(context),
                   "turns at the driven port squared times Re of flux over ampere-turns, fundamental at 20 Hz, "
                   "from harmonic balance; +-30 %");
    Curve inductance{"inductance_H", "inductance", units::Kind::Inductance, "H", {}, true, {}};
    for (const Driven& state : states) inductance.y.push_back(turns * turns * state.inductance);
    Curve flux{"peak_flux_T", "peak flux density", units::Kind::Flux, "T", {}, true, {}};
    for (const Driven& state : states) {
        const auto& all = state.cycle.fluxes;
        flux.y.push_back(
            std::max(*std::max_element(all.begin(), all.end()), -*std::min_element(all.begin(), all.end())));
    }
    trace.curves = {inductance, flux};
    addDoubt(trace, context.large->why());
    return std::make_shared<const Trace>(std::move(trace));
}

std::shared_ptr<const Trace> loopTrace(const TraceContext& context) {
    if (!context.large) return nullptr;
    constexpr int count = 161;
    const auto linear = context.large->linear(lowFrequency);
    const double emf = LargeSignal::emfForLevel(linear, context.design.brief.operatingLevel);
    const Cycle cycle = context.large->at(linear, emf).cycle;
    const auto [lowest, highest] = std::minmax_element(cycle.fields.begin(), cycle.fields.end());
    const double low = *lowest, high = *highest;
    if (!(high > low)) return nullptr;
    const auto& core = *context.stages.loop;
    std::vector<double> fields;
    fields.reserve(count);
    for (int i = 0; i < count; ++i) fields.push_back(low + (high - low) * i / (count - 1));
    Curve falling{"falling_T", "falling", units::Kind::Flux, "T", std::vector<double>(count), false, {}};
    Curve rising{"rising_T", "rising", units::Kind::Flux, "T", std::vector<double>(count), false, {}};
    auto memory = pastOf(context.design, context.solved, context.stages);
    if (-low > high) core.follow(memory, low);
    core.follow(memory, high);
    for (std::size_t i = fields.size(); i-- > 0;) falling.y[i] = core.follow(memory, fields[i]).value;
    for (std::size_t i = 0; i < fields.size(); ++i) rising.y[i] = core.follow(memory, fields[i]).value;
    Trace trace = startTrace(
        context, "bh_loop", {"field_A_per_m", "ampere-turns over the path", units::Kind::Field, "A/m", false}, fields,
        portsOf(context), "static loop of the stack with its joints at the operating level, mean flux density");
    trace.curves = {falling, rising};
    addDoubt(trace, context.large->why());
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
