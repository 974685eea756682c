// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/trace_making.h"

#include <limits>

#include "analysis/figure_making.h"
#include "analysis/headroom.h"

namespace analysis {

const std::vector<TraceEntry>& traceTable() {
    using units::Kind;
    static const std::vector<TraceEntry> table{
        {{"response", "Response", Kind::Decibel}, responseTrace},
        {{"impedance", "Impedance", Kind::Resistance}, impedanceTrace},
        {{"headroom", "Maximum level and headroom", Kind::LevelDbu}, headroomTrace, false, asksForDistortion},
        {{"noise", "Thermal noise", Kind::VoltageNoise}, noiseTrace},
        {{"noise_source", "Noise figure against source", Kind::Decibel}, noiseSourceTrace, true},
        {{"balance", "Common-mode rejection", Kind::Decibel}, balanceTrace, true},
        {{"distortion", "Distortion", Kind::Number}, distortionTrace, true, nullptr, true},
        {{"distortion_level", "Distortion at 20 Hz", Kind::Number}, distortionLevelTrace, true, nullptr, true},
        {{"distortion_limit", "Maximum level by distortion or knee", Kind::LevelDbu},
         distortionLimitTrace,
         true,
         nullptr,
         true},
        {{"inductance_level", "Inductance at 20 Hz", Kind::Inductance}, inductanceLevelTrace, true, nullptr, true},
        {{"bh_loop", "Loop of the core at 20 Hz", Kind::Flux}, loopTrace, true},
        {{"step", "Step", Kind::Voltage}, stepTrace, true},
        {{"square", "Square wave", Kind::Voltage}, squareTrace, true},
        {{"step_core", "Step with the core's loop", Kind::Voltage}, coreStepTrace, true},
        {{"square_core", "Square wave of 20 Hz with the core's loop", Kind::Voltage}, coreSquareTrace, true},
        {{"burst", "Tone burst of 20 Hz", Kind::Voltage}, burstTrace, true},
        {{"inrush", "Inrush after a level jump at 20 Hz", Kind::Current}, inrushTrace, true},
        {{"phantom_on", "Phantom supply switched on", Kind::Voltage}, phantomTrace, true}};
    return table;
}

const std::vector<TraceKind>& traceKinds() {
    static const std::vector<TraceKind> kinds = [] {
        std::vector<TraceKind> all;
        for (const auto& entry : traceTable()) all.push_back(entry.kind);
        return all;
    }();
    return kinds;
}

const Curve* Trace::curve(std::string_view curveName) const {
    for (const auto& c : curves)
        if (c.name == curveName) return &c;
    return nullptr;
}

Trace startTrace(const TraceContext& context, const std::string& name, std::vector<std::string> ports,
                 const std::string& source) {
    // Above some 300 kHz leads and fixture rule (common practice, no source).
    constexpr double leadsRule = 300e3;
    Trace trace;
    trace.name = name;
    for (const auto& kind : traceKinds())
        if (kind.name == name) trace.title = kind.title;
    trace.hookUp = context.solved.hookUp.name;
    trace.ports = std::move(ports);
    trace.frequency = context.frequencies;
    trace.validFrom = 0;
    trace.validTo = leadsRule;
    trace.why = fieldDoubts(context.stages);
    trace.valid = trace.why.empty();
    trace.source = source;
    return trace;
}

Trace startTrace(const TraceContext& context, const std::string& name, Axis axis, std::vector<double> along,
                 std::vector<std::string> ports, const std::string& source) {
    Trace trace = startTrace(context, name, std::move(ports), source);
    trace.axis = std::move(axis);
    trace.frequency = std::move(along);
    trace.validFrom = -std::numeric_limits<double>::infinity();
    trace.validTo = std::numeric_limits<double>::infinity();
    return trace;
}

}  // namespace analysis
