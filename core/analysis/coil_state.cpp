// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/coil_state.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "analysis/stages.h"
#include "network/inside.h"
#include "network/nodes.h"

namespace analysis {

namespace {

using network::Circuit;
using network::Complex;

/// Winding branches of each layer: the first, and one behind the last.
std::vector<std::pair<Eigen::Index, Eigen::Index>> branchesOf(const Answer::Stages& stages) {
    std::vector<std::pair<Eigen::Index, Eigen::Index>> all;
    Eigen::Index next = 0;
    for (const int count : stages.cut.pieces) {
        all.emplace_back(next, next + count);
        next += count;
    }
    return all;
}

/// A terminal with the coil's side of its lead-outs, which are branches without turns.
std::vector<int> joined(const Circuit& c, int terminal) {
    std::vector<int> all;
    if (terminal == network::earth) return all;
    all.push_back(terminal);
    for (Eigen::Index k = 0; k < c.turns.size(); ++k) {
        const auto& ends = c.windingBranches[static_cast<std::size_t>(k)];
        if (c.turns(k) == 0 && ends.from == terminal && ends.to != network::earth) all.push_back(ends.to);
    }
    return all;
}

/// +1 or -1: the way that the winding at the driven port's terminals magnetises the core.
double senseOf(const Circuit& c, int driven, const network::ComplexVector& current, Complex reference) {
    const auto& port = c.ports[static_cast<std::size_t>(driven)];
    const auto terminal = joined(c, port.plus == network::earth ? port.minus : port.plus);
    const auto touches = [&](int node) { return std::find(terminal.begin(), terminal.end(), node) != terminal.end(); };
    double sum = 0;
    for (Eigen::Index k = 0; k < c.turns.size(); ++k) {
        const auto& ends = c.windingBranches[static_cast<std::size_t>(k)];
        if (touches(ends.from) || touches(ends.to)) sum += c.turns(k) * (current(k) / reference).real();
    }
    return sum < 0 ? -1 : 1;
}

void takeCurrents(const Solved& solved, const Answer::Stages& stages, CoilState& state) {
    const auto& c = solved.network.circuit();
    const auto in = network::inside(solved.network, layerFrequency, solved.driven(), solved.observed());
    const double sense = senseOf(c, solved.driven(), in.current, in.intoUnit);
    const auto branches = branchesOf(stages);
    for (std::size_t k = 0; k < branches.size(); ++k) {
        double sum = 0;
        for (auto b = branches[k].first; b < branches[k].second; ++b)
            sum += c.turns(b) * (in.current(b) / in.intoUnit).real();
        state.layers[k].ampereTurns = sense * sum;
    }
}

void takeVoltages(const design::Design& design, const Solved& solved, const Answer::Stages& stages, CoilState& state) {
    const auto& c = solved.network.circuit();
    const auto in = network::inside(solved.network, layerFrequency, solved.driven());
    const auto& port = c.ports[static_cast<std::size_t>(solved.driven())];
    const Complex reference = port.common ? Complex(1) : in.potentialOf(port.plus) - in.potentialOf(port.minus);
    const auto volts = [&](int node) { return (in.potentialOf(node) / reference).real(); };
    const auto branches = branchesOf(stages);
    for (std::size_t k = 0; k < branches.size(); ++k) {
        state.layers[k].startVolts = volts(c.windingBranches[static_cast<std::size_t>(branches[k].first)].from);
        state.layers[k].finishVolts = volts(c.windingBranches[static_cast<std::size_t>(branches[k].second - 1)].to);
    }
    network::Nodes nodes(design, solved.hookUp);
    for (const auto& foil : stages.build->foils) {
        const int own = nodes.index(foil.name);
        double shown = 0;
        if (own != network::earth) {
            const auto at = std::find(c.nodes.begin(), c.nodes.end(), nodes.names()[static_cast<std::size_t>(own)]);
            shown = at == c.nodes.end() ? std::numeric_limits<double>::quiet_NaN()
                                        : volts(static_cast<int>(at - c.nodes.begin()));
        }
        state.foilVolts.push_back(shown);
    }
}

}  // namespace

CoilState coilState(const design::Design& design, const Answer& answer) {
    CoilState state;
    if (!answer.stages || design.hookUps.empty()) {
        state.why = "nothing is computed yet";
        return state;
    }
    const auto& stages = *answer.stages;
    state.hookUp = design.hookUps.front().name;
    const auto at = stages.solved.find(state.hookUp);
    if (at == stages.solved.end() || !(at->second->hookUp == design.hookUps.front())) {
        state.why = "hook-up " + state.hookUp + " is not solved";
        return state;
    }
    const Solved& solved = *at->second;
    if (solved.driven() < 0 || solved.observed() < 0) {
        state.why = "hook-up " + state.hookUp + " drives no port or observes none";
        return state;
    }
    const auto& ports = solved.network.circuit().ports;
    state.driven = ports[static_cast<std::size_t>(solved.driven())].name;
    state.observed = ports[static_cast<std::size_t>(solved.observed())].name;
    state.layers.resize(stages.build->layers.size());
    takeCurrents(solved, stages, state);
    takeVoltages(design, solved, stages, state);
    return state;
}

}  // namespace analysis
