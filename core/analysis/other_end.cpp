// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/other_end.h"

#include <algorithm>

#include "design/edit.h"
#include "network/circuit.h"
#include "network/nodes.h"
#include "units/joined.h"

namespace analysis {

namespace {

using design::Earthing;

/// The hook-up with a port's other terminal earthed; null where earth and straps forbid it.
design::DesignPtr withOtherTerminal(const design::Design& d, std::size_t hookUp, std::size_t use) {
    auto turned = design::changed(d, [&](design::Design& next) {
        auto& earthing = next.hookUps[hookUp].ports[use].earthing;
        earthing = earthing == Earthing::MinusEarthed ? Earthing::PlusEarthed : Earthing::MinusEarthed;
    });
    const auto* port = design::port(*turned, turned->hookUps[hookUp].ports[use].port);
    network::Nodes nodes(*turned, turned->hookUps[hookUp]);
    if (port == nullptr || nodes.index(port->plus) == nodes.index(port->minus)) return nullptr;
    return turned;
}

/// Ends of sections other than `own`'s that share a node with `name`.
bool joinedToOthers(network::Nodes& nodes, const design::Design& d, const std::string& own, const std::string& name) {
    const int node = nodes.index(name);
    return std::any_of(d.windings.begin(), d.windings.end(), [&](const design::Winding& w) {
        return w.name != own && (nodes.index(w.start) == node || nodes.index(w.finish) == node);
    });
}

}  // namespace

std::vector<OtherEnd> otherEnds(const design::Design& d, const std::string& hookUp) {
    std::vector<OtherEnd> all;
    const auto* h = design::hookUp(d, hookUp);
    if (h == nullptr) return all;
    const auto index = static_cast<std::size_t>(h - d.hookUps.data());
    network::Nodes nodes(d, *h);
    std::vector<int> turned;  // live nodes already dealt with
    for (std::size_t u = 0; u < h->ports.size(); ++u) {
        const auto& use = h->ports[u];
        const auto* port = design::port(d, use.port);
        if (port == nullptr || (use.earthing != Earthing::MinusEarthed && use.earthing != Earthing::PlusEarthed))
            continue;
        auto other = withOtherTerminal(d, index, u);
        if (!other) continue;
        const bool minus = use.earthing == Earthing::MinusEarthed;
        const auto &live = minus ? port->plus : port->minus, &cold = minus ? port->minus : port->plus;
        turned.push_back(nodes.index(live));
        all.push_back({units::joined({live, " earthed instead of ", cold, " (", port->name, ")"}), std::move(other)});
    }
    for (const auto& w : d.windings) {
        const bool startCold = nodes.index(w.start) == network::earth,
                   finishCold = nodes.index(w.finish) == network::earth;
        if (startCold == finishCold || !w.taps.empty()) continue;
        const std::string& live = startCold ? w.finish : w.start;
        if (joinedToOthers(nodes, d, w.name, live)) continue;
        if (std::find(turned.begin(), turned.end(), nodes.index(live)) != turned.end()) continue;
        all.push_back({w.name + " the other way round", design::swapEnds(d, w.name)});
    }
    return all;
}

std::vector<OtherEndEffect> otherEndEffects(const design::Design& d, const catalog::Catalog& shop, const AnswerPtr& now,
                                            const std::stop_token& stop) {
    std::vector<OtherEndEffect> effects;
    const Question question{now->hookUp, {1000.0}, false};  // its curves are not shown
    for (const auto& other : otherEnds(d, now->hookUp)) {
        const auto answered = answer(*other.design, shop, now, stop, question);
        if (answered->stopped) return {};
        effects.push_back({other.words, moves(*now, *answered)});
    }
    return effects;
}

}  // namespace analysis
