// SPDX-License-Identifier: GPL-3.0-or-later
// How a trace is added: one function in one file, listed in `traceTable`; then it is on screen, in CSV and in promises.
#pragma once

#include "analysis/stages.h"

namespace analysis {

class LargeSignal;
class CoreNetwork;

struct TraceContext {
    const design::Design& design;
    const Solved& solved;
    const Answer::Stages& stages;
    const std::vector<double>& frequencies;
    const LargeSignal* large = nullptr;   ///< null: no drive that goes through the core
    const CoreNetwork* inTime = nullptr;  ///< null likewise
};
using TraceMaker = std::shared_ptr<const Trace> (*)(const TraceContext&);
struct TraceEntry {
    TraceKind kind;
    TraceMaker make;
    bool slow = false;                                 ///< takes as long as all the others together
    bool (*slowFor)(const design::Design&) = nullptr;  ///< for some designs it does
    bool behindEddies = false;                         ///< slow by the sheets' eddy field, and soon there without it
    [[nodiscard]] bool isSlow(const design::Design& design) const { return slow || (slowFor && slowFor(design)); }
};
[[nodiscard]] const std::vector<TraceEntry>& traceTable();

/// A trace over something else than frequency, with its names, hook-up and validity filled in.
[[nodiscard]] Trace startTrace(const TraceContext& context, const std::string& name, Axis axis,
                               std::vector<double> along, std::vector<std::string> ports, const std::string& source);
/// A trace with its names, hook-up, frequencies and validity filled in.
[[nodiscard]] Trace startTrace(const TraceContext& context, const std::string& name, std::vector<std::string> ports,
                               const std::string& source);

// The traces, a file each.
[[nodiscard]] std::shared_ptr<const Trace> responseTrace(const TraceContext& context);
/// Its first curve alone, which a mask limits.
[[nodiscard]] std::shared_ptr<const Trace> responseLevelTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> impedanceTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> headroomTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> noiseTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> noiseSourceTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> balanceTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> distortionTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> distortionLevelTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> distortionLimitTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> inductanceLevelTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> loopTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> stepTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> squareTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> coreStepTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> coreSquareTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> burstTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> inrushTrace(const TraceContext& context);
[[nodiscard]] std::shared_ptr<const Trace> phantomTrace(const TraceContext& context);

}  // namespace analysis
