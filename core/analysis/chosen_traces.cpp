// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/chosen_traces.h"

#include <algorithm>
#include <optional>

#include "analysis/distortion.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"

namespace analysis {

std::vector<std::shared_ptr<const Trace>> chosenTraces(const design::Design& design, const catalog::Catalog& shop,
                                                       const Answer& nominal, const std::vector<std::string>& names,
                                                       const std::vector<double>& frequencies,
                                                       const std::stop_token& stop) {
    const network::Alone alone;
    std::vector<const TraceEntry*> entries;
    for (const auto& name : names)
        for (const auto& entry : traceTable())
            if (entry.kind.name == name) entries.push_back(&entry);
    const auto* hookUp = design::hookUp(design, nominal.hookUp);
    if (hookUp == nullptr || entries.empty()) return {};
    Pipeline pipeline(design, shop, nominal.stages.get(), stop);
    pipeline.layOut();
    pipeline.computeFields(nominal.stages->cut.pieces);
    if (pipeline.stopped()) return {};
    const auto solved = pipeline.solve(*hookUp);
    if (pipeline.stopped()) return {};
    // What runs through the core's loop is slow; nothing else reads large signals but where distortion ends the level.
    const bool slow = std::any_of(entries.begin(), entries.end(), [&](const auto* e) { return e->isSlow(design); });
    std::optional<LargeSignal> large;
    if (slow && drivesCore(*solved)) large.emplace(design, *solved, pipeline.stages(), true, stop);
    std::optional<CoreNetwork> inTime;
    if (large && large->hasCore() && !pipeline.stopped()) inTime.emplace(large->inTime());
    const TraceContext context{
        design, *solved, pipeline.stages(), frequencies, large ? &*large : nullptr, inTime ? &*inTime : nullptr};
    std::vector<std::shared_ptr<const Trace>> traces;
    for (const auto* entry : entries) {
        if (pipeline.stopped()) return {};
        if (auto made = entry->make(context)) traces.push_back(std::move(made));
    }
    return traces;
}

}  // namespace analysis
