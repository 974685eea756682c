// SPDX-License-Identifier: GPL-3.0-or-later
// Maximum level and headroom against frequency.
#include "analysis/headroom.h"
#include "analysis/trace_making.h"

namespace analysis {

std::shared_ptr<const Trace> headroomTrace(const TraceContext& context) {
    constexpr double lowest = 2, highest = 10e3;  // Hz, where distortion is computed
    const int driven = context.solved.driven();
    if (driven < 0 || !drivesCore(context.solved)) return nullptr;
    const LevelLimits limits(context.design, context.solved, context.stages, context.large, lowest, highest);
    Trace trace =
        startTrace(context, "headroom", {context.solved.network.circuit().ports[static_cast<std::size_t>(driven)].name},
                   limits.source());
    Curve level{"maximum_level_dBu", "maximum level", units::Kind::LevelDbu, "dBu", {}, false, {}};
    Curve room{"headroom_dB", "headroom", units::Kind::Decibel, "dB", {}, false, {}};
    Curve limit{"limit", "limit", units::Kind::Number, "", {}, false, {}};
    for (const double f : context.frequencies) {
        const MaximumLevel maximum = limits.at(f);
        level.y.push_back(maximum.dbu);
        room.y.push_back(maximum.dbu - context.design.brief.operatingLevel);
        limit.words.emplace_back(maximum.limit);
    }
    trace.curves = {level, room, limit};
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
