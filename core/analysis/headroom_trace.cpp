// SPDX-License-Identifier: GPL-3.0-or-later
// Maximum level and headroom against frequency.
#include "analysis/headroom.h"
#include "analysis/trace_making.h"

namespace analysis {

std::shared_ptr<const Trace> headroomTrace(const TraceContext& context) {
    const int driven = context.solved.driven();
    if (driven < 0 || context.solved.network.circuit().ports[static_cast<std::size_t>(driven)].common) return nullptr;
    Trace trace =
        startTrace(context, "headroom", {context.solved.network.circuit().ports[static_cast<std::size_t>(driven)].name},
                   "V = 4.443 f N A B at the core with the stack's saturation knee (criterion of our own)");
    Curve level{"maximum_level_dBu", "maximum level", units::Kind::LevelDbu, "dBu", {}, false, {}};
    Curve room{"headroom_dB", "headroom", units::Kind::Decibel, "dB", {}, false, {}};
    Curve limit{"limit", "limit", units::Kind::Number, "", {}, false, {}};
    const double knee = designKneeFlux(context.design, context.stages);
    for (const double f : context.frequencies) {
        const auto maximum = maximumLevel(context.design, context.solved, context.stages, knee, f);
        level.y.push_back(maximum.dbu);
        room.y.push_back(maximum.dbu - context.design.brief.operatingLevel);
        limit.words.emplace_back(maximum.limit);
    }
    trace.curves = {level, room, limit};
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
