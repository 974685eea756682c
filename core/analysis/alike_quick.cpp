// SPDX-License-Identifier: GPL-3.0-or-later
// Designs near a nominal by expansion of its networks.
#include <algorithm>
#include <cmath>

#include "analysis/alike_known.h"
#include "analysis/figure_making.h"
#include "analysis/headroom.h"
#include "coil/wire_resistance.h"
#include "network/in_parallel.h"
#include "network/nodes.h"
#include "network/port_networks.h"

namespace analysis {

namespace {

constexpr double closestWires = 0.1;  // two wires nearer than this share of their diameter could change places

/// Frequencies whose states span the space: few where they change little but for the core.
std::vector<double> spanning(double from, double to) {
    constexpr double border = 1e4, few = 1, many = 8;  // a decade
    std::vector<double> all;
    for (double f = from; f < to; f *= std::pow(10.0, 1 / (f < border ? few : many))) all.push_back(f);
    all.push_back(to);
    return all;
}

bool wiresApart(const coil::CoilBuild& build) {
    std::vector<double> diameters;
    for (const auto& layer : build.layers)
        if (!layer.conductor.foil) diameters.push_back(layer.conductor.bare);
    std::sort(diameters.begin(), diameters.end());
    for (std::size_t k = 1; k < diameters.size(); ++k)
        if (diameters[k] != diameters[k - 1] && diameters[k] < diameters[k - 1] * (1 + closestWires)) return false;
    return true;
}

std::vector<std::ptrdiff_t> layersOf(const network::Terms& terms, const coil::CoilBuild& build) {
    std::vector<std::ptrdiff_t> layers;
    for (const auto& term : terms) {
        const auto at = std::find_if(build.layers.begin(), build.layers.end(), [&](const coil::Layer& l) {
            return term.bareDiameter > 0 && !l.conductor.foil && l.conductor.bare == term.bareDiameter;
        });
        layers.push_back(at == build.layers.end() ? -1 : at - build.layers.begin());
    }
    return layers;
}

network::Circuit lightened(network::Circuit circuit) {
    circuit.leakage.resize(0, 0);
    circuit.eddies.clear();
    circuit.bareDiameter.resize(0);
    circuit.sectionOf.clear();
    circuit.windingOf.clear();
    return circuit;
}

/// The nominal's circuit with core, conductor and connections of another design.
network::Circuit circuitNear(const network::Circuit& nominal, const design::Design& design,
                             const design::HookUp& hookUp, const magnetics::CoreModel& core) {
    network::Circuit circuit = nominal;
    circuit.core = core;
    circuit.resistivity = coil::copperResistivity20 * coil::resistanceFactor(design.conditions.temperature);
    network::Circuit own;
    network::Nodes nodes(design, hookUp);
    network::addPorts(own, nodes, design, hookUp);
    for (std::size_t k = 0; k < circuit.lumped.size(); ++k) circuit.lumped[k].element = own.lumped[k].element;
    for (std::size_t p = 0; p < circuit.ports.size(); ++p)
        circuit.ports[p].acrossCapacitance = own.ports[p].acrossCapacitance;
    return circuit;
}

}  // namespace

bool Alike::expand(const std::vector<Sides>& sides, const std::stop_token& stop) {
    quick_.reset();
    const Known& known = *known_;
    const auto& nominal = *known.nominal;
    const auto light = [](const auto& families, const std::vector<std::size_t>& asked) {
        return std::all_of(asked.begin(), asked.end(), [&](std::size_t k) { return families[k].light; });
    };
    bool possible = light(designFamilies(), known.designFamilies) && !asksForDistortion(*nominal.design) &&
                    !nominal.design->conditions.phantom && wiresApart(*nominal.build);
    for (const auto& asked : known.asked) possible = possible && light(hookUpFamilies(), asked.families);
    for (const auto& mask : nominal.design->brief.masks) possible = possible && mask.trace == "response";
    if (!possible) return false;
    // Networks of every side in every hook-up that is asked for.
    std::vector<std::vector<network::Prepared>> made(4 * sides.size());
    std::vector<char> same(made.size(), 0);
    network::inParallel(made.size(), [&](std::size_t k) {
        const network::Alone alone;
        const auto& design = *sides[k / 4][k % 4];
        Pipeline pipeline(design, known.shop, &nominal, stop);
        pipeline.layOut();
        if (pipeline.stopped() || pipeline.stages().build->layers.size() != nominal.build->layers.size()) return;
        pipeline.computeFields(nominal.cut.pieces);
        if (pipeline.stopped()) return;
        for (const auto& asked : known.asked)
            made[k].emplace_back(
                circuitOf(design, design.hookUps[asked.hookUp], pipeline.stages(), pipeline.stages().cut));
        same[k] = 1;
    });
    if (std::find(same.begin(), same.end(), 0) != same.end()) return false;
    auto quick = std::make_unique<Quick>();
    for (std::size_t h = 0; h < known.asked.size(); ++h) {
        std::vector<network::Expanded::Sides> both;
        both.reserve(sides.size());
        for (std::size_t k = 0; k < sides.size(); ++k)
            both.push_back({std::move(made[4 * k][h]), std::move(made[4 * k + 1][h]), std::move(made[4 * k + 2][h]),
                            std::move(made[4 * k + 3][h])});
        const auto& hookUp = nominal.design->hookUps[known.asked[h].hookUp];
        const auto& network = nominal.solved.at(hookUp.name)->network;
        auto expanded = network::Expanded::of(network, both, spanning(known.from, known.to));
        if (!expanded) return false;
        auto layers = layersOf(expanded->kinds(), *nominal.build);
        quick->hookUps.push_back({std::move(*expanded), lightened(network.circuit()), std::move(layers)});
    }
    quick_ = std::move(quick);
    return true;
}

Found Alike::quickly(const design::Design& design, const std::vector<double>& steps,
                     const std::stop_token& stop) const {
    const network::Alone alone;
    Pipeline pipeline(design, known_->shop, known_->nominal.get(), stop);
    pipeline.layOut();
    if (quick_ == nullptr || pipeline.stages().build->layers.size() != known_->nominal->build->layers.size())
        return found(design, stop);
    pipeline.takeFields();
    const auto& layers = pipeline.stages().build->layers;
    for (std::size_t h = 0; h < known_->asked.size(); ++h) {
        const auto& one = quick_->hookUps[h];
        const auto& hookUp = design.hookUps[known_->asked[h].hookUp];
        std::vector<double> diameters;
        diameters.reserve(one.layerOfTerm.size());
        for (std::size_t k = 0; k < one.layerOfTerm.size(); ++k)
            diameters.push_back(one.layerOfTerm[k] < 0
                                    ? one.network.kinds()[k].bareDiameter
                                    : layers[static_cast<std::size_t>(one.layerOfTerm[k])].conductor.bare);
        auto solved = std::make_shared<Solved>(
            hookUp,
            one.network.at(steps, circuitNear(one.circuit, design, hookUp, *pipeline.stages().core), diameters));
        solved->sweep(stop, known_->from, known_->to);
        if (pipeline.stopped()) return {};
        pipeline.give(solved);
    }
    return told(design, pipeline);
}

}  // namespace analysis
