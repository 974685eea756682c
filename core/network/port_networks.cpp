// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/port_networks.h"

#include <numbers>

namespace network {

namespace {

int addLumped(Circuit& circuit, BranchEnds ends, const design::PortUse& use, double share) {
    LumpedBranch branch;
    branch.ends = ends;
    branch.table = use.table;
    if (use.through) branch.element = *use.through;
    branch.share = share;
    circuit.lumped.push_back(branch);
    return static_cast<int>(circuit.lumped.size()) - 1;
}

void addThrough(Circuit& circuit, CircuitPort& port, const design::PortUse& use) {
    if (!use.through && use.table.empty()) return;
    if (use.earthing != design::Earthing::Balanced) {
        port.through = {addLumped(circuit, {port.minus, port.plus}, use, 1)};
        port.emfShare = {1};
        return;
    }
    // The middle of the network is earthed: half the impedance in each leg.
    port.through = {addLumped(circuit, {earth, port.plus}, use, 0.5),
                    addLumped(circuit, {earth, port.minus}, use, 0.5)};
    port.common = use.mode == design::Mode::Common;
    port.emfShare = port.common ? std::vector<double>{1, 1} : std::vector<double>{0.5, -0.5};
}

}  // namespace

void addPorts(Circuit& circuit, Nodes& nodes, const design::Design& design, const design::HookUp& hookUp) {
    for (const auto& use : hookUp.ports) {
        const auto* terminals = design::port(design, use.port);
        if (terminals == nullptr) continue;  // `check` has said so
        CircuitPort port;
        port.name = use.port;
        port.role = use.role;
        port.plus = nodes.index(terminals->plus);
        port.minus = nodes.index(terminals->minus);
        addThrough(circuit, port, use);
        for (const auto& branch : use.across) {
            if (branch.resistance.value == 0 && branch.inductance.value == 0) {
                port.acrossCapacitance += branch.capacitance;
                continue;
            }
            LumpedBranch lumped;
            lumped.ends = {port.plus, port.minus};
            lumped.element = branch;
            circuit.lumped.push_back(lumped);
            port.across.push_back(static_cast<int>(circuit.lumped.size()) - 1);
        }
        circuit.ports.push_back(std::move(port));
    }
}

Complex portAdmittance(const Circuit& circuit, int port, double frequency) {
    const auto& p = circuit.ports[static_cast<std::size_t>(port)];
    Complex y(0, 2 * std::numbers::pi * frequency * p.acrossCapacitance);
    for (const int k : p.across) y += 1.0 / impedance(circuit.lumped[static_cast<std::size_t>(k)], frequency);
    if (!p.through.empty() && p.role != design::Role::Drive) y += 1.0 / throughImpedance(circuit, port, frequency);
    return y;
}

}  // namespace network
