// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "analysis/chosen_traces.h"
#include "shop/bench_prediction.h"
#include "shop/curve_value.h"

namespace shop {

namespace {

design::PortUse useOf(const char* port, design::Role role) {
    design::PortUse use;
    use.port = port;
    use.role = role;
    return use;
}

}  // namespace

design::HookUp ratioHookUp(const design::Winding& first, const design::Winding& other) {
    design::HookUp hookUp;
    hookUp.name = "ratio meter of the bench";
    hookUp.earths = {first.start, other.start, "core"};
    hookUp.ports = {useOf("ratio from", design::Role::Drive), useOf("ratio to", design::Role::Observe)};
    // Without a resistance a drive is a current; this much loses nothing at a winding.
    hookUp.ports.front().through.emplace();
    hookUp.ports.front().through->resistance = 1e-6;
    return hookUp;
}

std::vector<design::Port> ratioPorts(const design::Winding& first, const design::Winding& other) {
    return {{"ratio from", first.finish, first.start, nullptr}, {"ratio to", other.finish, other.start, nullptr}};
}

std::map<std::string, RatioReading> ratioReadings(const BenchState& state, const catalog::Catalog& shop) {
    const design::Design& design = state.bench.design;
    std::map<std::string, RatioReading> all;
    const auto& first = design.windings.front();
    const auto inductance = state.figures.find("inductance_1kHz." + first.name);
    const double doubt =
        inductance == state.figures.end() ? 1 : std::hypot(inductance->second.model, inductance->second.tolerance);
    for (std::size_t k = 1; k < design.windings.size(); ++k) {
        const auto& other = design.windings[k];
        design::Design read = design;
        for (auto& port : ratioPorts(first, other)) read.ports.push_back(std::move(port));
        const std::vector<double> tried{50, 100, 300, 1000};
        read.hookUps.push_back(ratioHookUp(first, other));
        analysis::Answer shown = *state.answer;
        shown.hookUp = read.hookUps.back().name;
        const auto traces = analysis::chosenTraces(read, shop, shown, {"response"}, tried);
        const auto* trace = traces.empty() ? nullptr : traces.front().get();
        const double turns = std::abs(design::seriesTurns(design, other) / design::seriesTurns(design, first));
        if (trace == nullptr || trace->curves.empty() || !(turns > 0) || !std::isfinite(turns)) continue;
        RatioReading best{0, 0, 1e300, turns};
        for (const double f : tried) {
            const double reading = std::pow(10, valueAt(*trace, trace->curves.front(), f) / 20);
            const double off = std::abs(reading / turns - 1) * doubt;
            if (off < best.doubt) best = {f, reading, off, turns};
        }
        if (best.frequency > 0) all[other.name] = best;
    }
    return all;
}

}  // namespace shop
