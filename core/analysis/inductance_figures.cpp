// SPDX-License-Identifier: GPL-3.0-or-later
// Inductance of each winding, and leakage of each pair as an impedance meter would show it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "analysis/figure_making.h"
#include "network/dense.h"
#include "network/extra_branches.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

/// Inductance of a winding with the others open and without capacitances, H: sections as they are joined. `z`:
/// impedance of all branches at that frequency.
double windingInductance(const network::Circuit& c, const network::ComplexMatrix& z, const design::Design& design,
                         int winding, double frequency) {
    const bool parallel = design.windings[static_cast<std::size_t>(winding)].connection == design::Connection::Parallel;
    std::vector<std::vector<Eigen::Index>> paths;
    std::vector<std::string> names;
    Eigen::Index branch = 0;
    for (const auto& name : c.sectionOf) {
        if (c.windingOf[static_cast<std::size_t>(branch)] == winding) {
            const std::string key = parallel ? name : "all";
            auto at = std::find(names.begin(), names.end(), key);
            if (at == names.end()) {
                names.push_back(key);
                paths.emplace_back();
                at = names.end() - 1;
            }
            paths[static_cast<std::size_t>(at - names.begin())].push_back(branch);
        }
        ++branch;
    }
    const auto count = static_cast<Eigen::Index>(paths.size());
    if (count == 0) return 0;
    network::ComplexMatrix reduced = network::ComplexMatrix::Zero(count, count);
    for (Eigen::Index p = 0; p < count; ++p)
        for (Eigen::Index q = 0; q < count; ++q)
            for (const auto i : paths[static_cast<std::size_t>(p)])
                for (const auto k : paths[static_cast<std::size_t>(q)]) reduced(p, q) += z(i, k);
    return network::parallelImpedance(reduced).imag() / (2 * std::numbers::pi * frequency);
}

/// The first hook-up's earths and shields with nothing on its ports, one winding shorted and a port across another.
design::HookUp shortCircuit(const design::Design& design, const design::Winding& seen, const design::Winding& shorted) {
    design::HookUp h;
    h.name = "measurement";
    const auto& usual = design.hookUps.front();
    for (const auto& strap : usual.straps) h.straps.push_back(strap);
    h.earths = usual.earths;
    h.straps.push_back({shorted.start, shorted.finish});
    design::PortUse use;
    use.port = seen.name;
    use.role = design::Role::Drive;
    h.ports.push_back(use);
    return h;
}

}  // namespace

void addInductanceFigures(const DesignContext& context, std::vector<units::Figure>& figures) {
    const auto& design = context.design;
    const std::string doubts = fieldDoubts(context.stages());
    design::HookUp bare;
    bare.name = "measurement";
    context.pipeline.prepareMeasurements();
    const network::Circuit circuit = context.pipeline.measured(bare);
    const auto at = [&](double f) { return network::withoutClosed(circuit, network::windingImpedance(circuit, f)); };
    constexpr double low = 10, middle = 1000;
    const auto lowImpedance = at(low), middleImpedance = at(middle);
    for (std::size_t w = 0; w < design.windings.size(); ++w)
        for (const auto& [name, frequency, z] :
             {std::tuple{"inductance_10Hz.", low, &lowImpedance}, {"inductance_1kHz.", middle, &middleImpedance}})
            figures.push_back(
                {name + design.windings[w].name,
                 windingInductance(circuit, *z, design, static_cast<int>(w), frequency),
                 "H",
                 0.3,
                 "L = mu0 N^2 A / l times the real part of the sheets' complex permeability mu tanh(theta)/theta "
                 "with joint gap, plus leakage; small signal, capacitances left out",
                 context.stages().core->valid,
                 context.stages().core->why,
                 "",
                 {}});
    constexpr double leakageFrequency = 10e3;
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (std::size_t a = 0; a < design.windings.size(); ++a)
        for (std::size_t b = a + 1; b < design.windings.size(); ++b) pairs.emplace_back(a, b);
    std::vector<double> leakage(pairs.size());
    network::inParallel(pairs.size(), [&](std::size_t k) {
        if (context.pipeline.stopped()) return;
        const auto &seen = design.windings[pairs[k].first], &shorted = design.windings[pairs[k].second];
        const auto network = context.pipeline.measurement(shortCircuit(design, seen, shorted), seen);
        leakage[k] = network.solve(leakageFrequency)(network.layout().impedance(0)).imag() /
                     (2 * std::numbers::pi * leakageFrequency);
    });
    for (std::size_t k = 0; k < pairs.size(); ++k)
        figures.push_back(
            {"leakage_10kHz." + design.windings[pairs[k].first].name + "." + design.windings[pairs[k].second].name,
             leakage[k],
             "H",
             std::hypot(0.1, context.stages().cut.leakage->spread),
             "Im Z / omega at the first winding, second shorted, all else in; layer matrix by Roth's double series in "
             "the window and image potential beyond it",
             doubts.empty(),
             doubts,
             "",
             {}});
}

}  // namespace analysis
