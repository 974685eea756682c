// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/ladders.h"

namespace network {

namespace {

void spread(const Circuit& circuit, int from, Ladders& set) {
    std::vector<int> open{from};
    while (!open.empty()) {
        const int at = open.back();
        open.pop_back();
        const double base = at == earth ? 0 : set.turns(at);
        for (std::size_t k = 0; k < circuit.windingBranches.size(); ++k) {
            const auto ends = circuit.windingBranches[k];
            for (const int sign : {1, -1}) {
                const int here = sign > 0 ? ends.from : ends.to, there = sign > 0 ? ends.to : ends.from;
                if (here != at || there == earth || set.island[static_cast<std::size_t>(there)] >= 0) continue;
                set.island[static_cast<std::size_t>(there)] = set.count;
                set.turns(there) = base - sign * circuit.turns(static_cast<Eigen::Index>(k));
                open.push_back(there);
            }
        }
    }
    ++set.count;
}

}  // namespace

Ladders ladders(const Circuit& circuit) {
    const Eigen::Index nodes = circuit.capacitance.rows();
    Ladders set{std::vector<int>(static_cast<std::size_t>(nodes), -1), Vector::Zero(nodes), 0};
    spread(circuit, earth, set);
    for (Eigen::Index n = 0; n < nodes; ++n)
        if (set.island[static_cast<std::size_t>(n)] < 0) {
            set.island[static_cast<std::size_t>(n)] = set.count;
            spread(circuit, static_cast<int>(n), set);
        }
    return set;
}

double portTurns(const Circuit& circuit, const Ladders& set, int port) {
    const auto& p = circuit.ports[static_cast<std::size_t>(port)];
    const auto islandOf = [&](int node) { return node == earth ? 0 : set.island[static_cast<std::size_t>(node)]; };
    const auto turnsAt = [&](int node) { return node == earth ? 0.0 : set.turns(node); };
    return islandOf(p.plus) == islandOf(p.minus) ? turnsAt(p.plus) - turnsAt(p.minus) : 0;
}

}  // namespace network
