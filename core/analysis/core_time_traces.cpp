// SPDX-License-Identifier: GPL-3.0-or-later
// Step, square wave, tone burst and level jump with the core's loop beside the linear core.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "analysis/core_in_time.h"
#include "analysis/direct_current.h"
#include "analysis/distortion.h"
#include "analysis/step.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"
#include "network/ladders.h"

namespace analysis {

namespace {

constexpr double frequency = 20;  // Hz, where cores are asked
constexpr int stepsPerCycle = 256;
constexpr double interval = 1 / (frequency * stepsPerCycle);

/// EMF, V, that goes straight between instants and may jump at them.
struct Signal {
    std::vector<double> time, before, after;
    double every = 0;  ///< s between instants; 0: they are not even
    void add(double at, double endsAt, double startsAt) {
        time.push_back(at);
        before.push_back(endsAt);
        after.push_back(startsAt);
    }
};

/// The network in time, with what every run starts from.
struct Stand {
    const TraceContext& context;
    double direct, peak;  ///< A/m; V of EMF at the operating level

    explicit Stand(const TraceContext& from)
        : context(from),
          direct(directFieldOf(from.design, from.solved, from.stages)),
          peak(std::numbers::sqrt2 *
               LargeSignal::emfForLevel(from.large->linear(frequency), from.design.brief.operatingLevel)) {}
    [[nodiscard]] CoreRun<LoopInTime> looped() const {
        return {*context.inTime,
                {*context.stages.loop, pastOf(context.design, context.solved, context.stages)},
                direct,
                peak};
    }
    [[nodiscard]] CoreRun<LinearInTime> linear() const {
        const auto& core = *context.stages.core;
        const double slope = magnetics::turnInductance(core, 0).real() * core.pathLength / core.area;
        return {*context.inTime, LinearInTime(slope), direct, peak};
    }
};

/// What happened at each instant of a signal.
struct Story {
    std::vector<double> output, source, flux, current;  ///< V, A, T, ampere-turns
    bool hurried = false;
};

template <class Run>
Story story(Run run, const Signal& emf) {
    Story told;
    for (std::size_t n = 0; n < emf.time.size(); ++n) {
        if (n > 0) run.go(emf.every > 0 ? emf.every : emf.time[n] - emf.time[n - 1], emf.after[n - 1], emf.before[n]);
        told.output.push_back(run.output());
        told.source.push_back(run.source());
        told.flux.push_back(run.flux());
        told.current.push_back(run.current());
    }
    told.hurried = run.hurried();
    return told;
}

/// A trace of both stories' output.
Trace outputs(const TraceContext& context, const char* name, const Signal& emf, bool logarithmic, const Story& looped,
              const Story& linear, const char* what) {
    const auto& ports = context.solved.network.circuit().ports;
    const auto port = [&](int index) { return ports[static_cast<std::size_t>(index)].name; };
    const double off = context.inTime->fit().error;
    Trace trace = startTrace(context, name, {"time_s", "time", units::Kind::Time, "s", logarithmic}, emf.time,
                             {port(context.large->driven()), port(context.large->observed())},
                             std::string(what) +
                                 "; the core's static loop stepped in time in the network with its sheets' eddy field, "
                                 "from the core's rest, at the peak of the operating level's sine");
    trace.curves = {{"output_V", "with loop", units::Kind::Voltage, "V", looped.output, false, {}},
                    {"linear_V", "linear", units::Kind::Voltage, "V", linear.output, false, {}}};
    const auto doubt = [&](const std::string& why) {
        if (!why.empty()) trace.why += (trace.why.empty() ? "" : "; ") + why;
    };
    doubt(context.large->why());
    if (looped.hurried || linear.hurried) {
        trace.valid = false;
        doubt("the network rings too sharply to be followed in time");
    }
    if (off > 0.01)
        doubt("the network in time is within " + std::to_string(std::lround(std::ceil(100 * off))) +
              " % of its curves up to 300 kHz");
    return trace;
}

std::shared_ptr<const Trace> shared(Trace trace) {
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace

/// What the loop adds is stepped; the rest, ringing included, is the linear step's.
std::shared_ptr<const Trace> coreStepTrace(const TraceContext& context) {
    if (!context.inTime) return nullptr;
    const Stand stand(context);
    Signal emf;
    emf.add(0, 0, stand.peak);
    for (const double t : logarithmicGrid(1e-6, 1, 600)) emf.add(t, stand.peak, stand.peak);
    Story looped = story(stand.looped(), emf), linear = story(stand.linear(), emf);
    const int output = context.solved.network.layout().voltage(context.large->driven(), context.large->observed());
    const StepResponse step([&](double f) { return context.solved.at(f, output).real(); }, lowestFrequency,
                            highestFrequency);
    network::inParallel(emf.time.size(), [&](std::size_t i) {
        const double exact = stand.peak * step.at(emf.time[i]);
        looped.output[i] += exact - linear.output[i];
        linear.output[i] = exact;
    });
    // A logarithmic axis has no place for the jump itself.
    emf.time.erase(emf.time.begin());
    looped.output.erase(looped.output.begin());
    linear.output.erase(linear.output.begin());
    return shared(outputs(context, "step_core", emf, true, looped, linear, "step of the EMF"));
}

std::shared_ptr<const Trace> coreSquareTrace(const TraceContext& context) {
    constexpr int halves = 8;
    if (!context.inTime) return nullptr;
    const Stand stand(context);
    Signal emf{{}, {}, {}, interval};
    for (int n = 0; n < halves * stepsPerCycle / 2; ++n) {
        const auto side = [&](int at) { return at < 0 ? 0 : at / (stepsPerCycle / 2) % 2 == 0 ? 1 : -1; };
        emf.add(n * interval, side(n - 1) * stand.peak, side(n) * stand.peak);
    }
    return shared(outputs(context, "square_core", emf, false, story(stand.looped(), emf), story(stand.linear(), emf),
                          "square wave of 20 Hz, from its start"));
}

std::shared_ptr<const Trace> burstTrace(const TraceContext& context) {
    constexpr int cycles = 4, after = 4;
    if (!context.inTime) return nullptr;
    const Stand stand(context);
    Signal emf{{}, {}, {}, interval};
    for (int n = 0; n <= (cycles + after) * stepsPerCycle; ++n) {
        const double value =
            n < cycles * stepsPerCycle ? stand.peak * std::sin(2 * std::numbers::pi * n / stepsPerCycle) : 0;
        emf.add(n * interval, value, value);
    }
    return shared(outputs(context, "burst", emf, false, story(stand.looped(), emf), story(stand.linear(), emf),
                          "four cycles of 20 Hz"));
}

namespace {

constexpr double lowLevel = 0.1;  // share of the level ahead of the jump: 20 dB below
constexpr int cyclesBefore = 2;

/// A cosine, so that the flux starts without offset, that jumps to the operating level `phase` steps into a cycle.
Signal jump(double peak, int phase, int cyclesAfter) {
    Signal emf{{}, {}, {}, interval};
    const int at = cyclesBefore * stepsPerCycle + phase;
    for (int n = 0; n <= at + cyclesAfter * stepsPerCycle; ++n) {
        const double sine = peak * std::cos(2 * std::numbers::pi * n / stepsPerCycle);
        emf.add(n * interval, (n <= at ? lowLevel : 1) * sine, (n < at ? lowLevel : 1) * sine);
    }
    return emf;
}

double greatest(const std::vector<double>& values) {
    double greatest = 0;
    for (const double value : values) greatest = std::max(greatest, std::abs(value));
    return greatest;
}

/// Phase of the jump, steps into the cycle, that drives the greatest current.
int worstPhase(const Stand& stand) {
    constexpr int phases = 16;
    std::vector<double> peaks(phases);
    network::inParallel(phases, [&](std::size_t k) {
        peaks[k] = greatest(story(stand.looped(), jump(stand.peak, int(k) * stepsPerCycle / phases, 1)).current);
    });
    return int(std::max_element(peaks.begin(), peaks.end()) - peaks.begin()) * stepsPerCycle / phases;
}

}  // namespace

std::shared_ptr<const Trace> inrushTrace(const TraceContext& context) {
    constexpr int cyclesAfter = 6;
    if (!context.inTime) return nullptr;
    const Stand stand(context);
    const int phase = worstPhase(stand);
    const Signal emf = jump(stand.peak, phase, cyclesAfter);
    const Story looped = story(stand.looped(), emf), linear = story(stand.linear(), emf);
    const std::string what = "20 Hz that jumps by 20 dB to the operating level " +
                             std::to_string(std::lround(360.0 * phase / stepsPerCycle)) +
                             " degrees after the EMF's peak, the worst of sixteen phases";
    Trace trace = outputs(context, "inrush", emf, false, looped, linear, what.c_str());
    const auto& circuit = context.solved.network.circuit();
    const double turns = network::portTurns(circuit, network::ladders(circuit), context.large->driven());
    std::vector<double> magnetising;
    magnetising.reserve(looped.current.size());
    for (const double current : looped.current) magnetising.push_back(current / turns);
    const auto curve = [](const char* name, const char* label, units::Kind kind, const char* unit,
                          const std::vector<double>& y) { return Curve{name, label, kind, unit, y, false, {}}; };
    std::vector<Curve> all{curve("source_A", "source", units::Kind::Current, "A", looped.source),
                           curve("magnetising_A", "magnetising", units::Kind::Current, "A", magnetising),
                           curve("source_linear_A", "source, linear", units::Kind::Current, "A", linear.source),
                           curve("flux_T", "flux density", units::Kind::Flux, "T", looped.flux)};
    all.insert(all.end(), trace.curves.begin(), trace.curves.end());
    trace.curves = std::move(all);
    return shared(std::move(trace));
}

}  // namespace analysis
