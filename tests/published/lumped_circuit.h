// SPDX-License-Identifier: GPL-3.0-or-later
// Textbook circuits as networks of a few branches: windings on a lossless core, what hangs on them, stray capacitance.
#pragma once

#include <cmath>
#include <numbers>

#include "network/solve.h"

namespace lumped {

/// Every node needs some capacitance; this much is far below every tolerance used.
inline constexpr double stray = 1e-16;

/// A network of `nodes` nodes with stray capacitance and a core that gives `perTurn` henry on one turn. Sheets of 1 nm:
/// no eddy currents at any frequency of interest.
inline network::Circuit circuit(int nodes, double perTurn = 0) {
    network::Circuit c;
    for (int k = 0; k < nodes; ++k) c.nodes.push_back(std::to_string(k));
    c.capacitance = network::ComplexMatrix::Identity(nodes, nodes) * stray;
    c.turns.resize(0);
    c.resistance.resize(0);
    c.bareDiameter.resize(0);
    c.leakage.resize(0, 0);
    c.resistivity = 1.7241e-8;
    c.core.pathLength = 1;
    c.core.area = perTurn / (4e-7 * std::numbers::pi * 1000);
    magnetics::StackBlock block;
    block.thickness = 1e-9;
    block.initialPermeability = 1000;
    block.resistivity = 1;
    c.core.blocks = {block};
    return c;
}

/// A winding of `turns` with series resistance and leakage of its own.
inline void addWinding(network::Circuit& c, int from, int to, double turns, double resistance, double leakage = 0) {
    const auto n = static_cast<Eigen::Index>(c.windingBranches.size());
    c.windingBranches.push_back({from, to});
    c.turns.conservativeResize(n + 1);
    c.resistance.conservativeResize(n + 1);
    c.bareDiameter.conservativeResize(n + 1);
    c.turns(n) = turns;
    c.resistance(n) = resistance;
    c.bareDiameter(n) = 0;
    network::Matrix wider = network::Matrix::Zero(n + 1, n + 1);
    wider.topLeftCorner(n, n) = c.leakage;
    wider(n, n) = leakage;
    c.leakage = wider;
    c.windingOf.push_back(static_cast<int>(n));
    c.sectionOf.push_back("W." + std::to_string(n));
}

/// A port from a node to earth; resistance 0: open.
inline void addPort(network::Circuit& c, const char* name, int node, design::Role role, double resistance) {
    network::CircuitPort port;
    port.name = name;
    port.plus = node;
    port.role = role;
    if (resistance > 0) {
        network::LumpedBranch branch;
        branch.ends = {network::earth, node};
        branch.element.resistance = resistance;
        port.through = {static_cast<int>(c.lumped.size())};
        port.emfShare = {1};
        c.lumped.push_back(branch);
    }
    c.ports.push_back(port);
}

/// Output over EMF, from port 0 to port 1.
inline network::Complex transfer(const network::Prepared& network, double frequency) {
    return network.solve(frequency)(network.layout().voltage(0, 1));
}

inline double decibel(network::Complex ratio) {
    return 20 * std::log10(std::abs(ratio));
}

/// Nodes with nothing but what the test adds: no stray capacitance.
inline network::Circuit bare(int nodes) {
    auto c = circuit(nodes, 1);
    c.capacitance.setZero();
    return c;
}

}  // namespace lumped
