// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/direct_current.h"

#include <algorithm>
#include <cmath>

#include "network/direct_current.h"
#include "network/ladders.h"

namespace analysis {

namespace {

constexpr double rounding = 1e-6;  // and leaks of the nodal equations, of what a shorted leg drives

/// The node of a terminal in a circuit: its own, or that of what it is strapped to.
int nodeOfTerminal(const network::Circuit& circuit, const design::HookUp& hookUp, const std::string& terminal) {
    const auto find = [&](const std::string& name) {
        const auto at = std::find(circuit.nodes.begin(), circuit.nodes.end(), name);
        return at == circuit.nodes.end() ? network::earth : static_cast<int>(at - circuit.nodes.begin());
    };
    if (const int own = find(terminal); own != network::earth) return own;
    for (const auto& strap : hookUp.straps)
        if (std::find(strap.begin(), strap.end(), terminal) != strap.end())
            for (const auto& other : strap)
                if (const int node = find(other); node != network::earth) return node;
    return network::earth;
}

}  // namespace

network::DirectSupply phantomSupply(const design::PhantomFeed& phantom, const Solved& solved, int portIndex,
                                    bool swap) {
    const auto& circuit = solved.network.circuit();
    const auto& port = circuit.ports[static_cast<std::size_t>(portIndex)];
    network::DirectSupply supply;
    supply.withoutNetworkOf = portIndex;
    const double off = (swap ? -1 : 1) * phantom.mismatch / 2;
    if (phantom.centreTap.empty()) {
        supply.feeds = {{port.plus, phantom.voltage, phantom.resistance * (1 + off)},
                        {port.minus, phantom.voltage, phantom.resistance * (1 - off)}};
    } else {
        const int tap = nodeOfTerminal(circuit, solved.hookUp, phantom.centreTap);
        supply.feeds = {{tap, phantom.voltage, phantom.resistance / 2}};
    }
    return supply;
}

DirectState directState(const design::Design& design, const Solved& solved) {
    DirectState state;
    for (const auto& direct : design.conditions.directCurrents)
        if (const auto* winding = design::winding(design, direct.winding))
            state.byDesign += direct.current * design::seriesTurns(design, *winding);
    if (!design.conditions.phantom) return state;
    const design::PhantomFeed& phantom = *design.conditions.phantom;
    const auto& circuit = solved.network.circuit();
    const auto port =
        std::find_if(circuit.ports.begin(), circuit.ports.end(), [&](const auto& p) { return p.name == phantom.port; });
    if (port == circuit.ports.end()) return state;
    const int index = static_cast<int>(port - circuit.ports.begin());
    state.fed = true;
    state.turns = network::portTurns(circuit, network::ladders(circuit), index);
    const auto larger = [](double a, double b) { return std::abs(b) > std::abs(a) ? b : a; };
    for (const bool swap : {false, true}) {
        network::DirectSupply service = phantomSupply(phantom, solved, index, swap);
        network::DirectSupply fault = service;
        service.drains = {{port->plus, phantom.current / 2}, {port->minus, phantom.current / 2}};
        state.phantom = larger(state.phantom, network::directAmpereTurns(circuit, service));
        fault.earthed = {swap ? port->minus : port->plus};  // the smaller resistor feeds the other leg
        state.shorted = larger(state.shorted, network::directAmpereTurns(circuit, fault));
    }
    if (std::abs(state.phantom) < rounding * std::abs(state.shorted)) state.phantom = 0;
    if (state.byDesign != 0) state.phantom = std::copysign(state.phantom, state.byDesign);
    return state;
}

double directFieldOf(const design::Design& design, const Solved& solved, const Answer::Stages& stages) {
    return directState(design, solved).inService() / stages.core->pathLength;
}

magnetics::CoreLoop::Memory pastOf(const design::Design& design, const Solved& solved, const Answer::Stages& stages) {
    auto memory = stages.loop->atRest();
    if (!design.conditions.phantom || !design.conditions.phantom->afterShort) return memory;
    stages.loop->follow(memory, directState(design, solved).shorted / stages.core->pathLength);
    stages.loop->follow(memory, 0);
    return memory;
}

}  // namespace analysis
