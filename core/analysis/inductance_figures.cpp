// SPDX-License-Identifier: GPL-3.0-or-later
// Inductance of each winding, and leakage of each pair as an impedance meter would show it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "analysis/figure_making.h"
#include "network/dense.h"
#include "network/extra_branches.h"

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

/// Open-circuit impedances between the ends of all windings, ohm: at each while a current flows into each, with the
/// first hook-up's earths and shields and nothing on its ports.
network::ComplexMatrix openImpedances(const DesignContext& context, double frequency) {
    const auto& usual = context.design.hookUps.front();
    design::HookUp bench;
    bench.name = "measurement";
    bench.straps = usual.straps;
    bench.earths = usual.earths;
    std::vector<design::Port> ends;
    for (const auto& winding : context.design.windings) {
        ends.push_back({winding.name, winding.start, winding.finish, {}});
        design::PortUse use;
        use.port = winding.name;
        use.role = design::Role::Drive;
        bench.ports.push_back(std::move(use));
    }
    design::Design metered = context.design;
    metered.ports = std::move(ends);
    const Answer::Stages& stages = context.stages();
    const network::Prepared network(circuitOf(metered, bench, stages, stages.coarse),
                                    network::Prepared::Currents::Branches);
    const network::ComplexVector values = network.solve(frequency);
    const auto count = static_cast<int>(context.design.windings.size());
    network::ComplexMatrix z(count, count);
    for (int at = 0; at < count; ++at)
        for (int excited = 0; excited < count; ++excited)
            z(at, excited) = values(network.layout().voltage(excited, at));
    return z;
}

/// Impedance at one pair of ends while another is shorted: Z_aa - Z_ab Z_ba / Z_bb, which is the voltage at a when the
/// current into b makes that at b vanish (two-port theory). One that straps short already changes nothing.
network::Complex whileShorted(const network::ComplexMatrix& z, Eigen::Index seen, Eigen::Index shorted) {
    constexpr double none = 1e-15;
    if (std::abs(z(shorted, shorted)) <= none * z.cwiseAbs().maxCoeff()) return z(seen, seen);
    return z(seen, seen) - z(seen, shorted) * z(shorted, seen) / z(shorted, shorted);
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
    const std::size_t count = design.windings.size();
    if (count < 2 || context.pipeline.stopped()) return;
    const network::ComplexMatrix ends = openImpedances(context, leakageFrequency);
    for (std::size_t a = 0; a < count; ++a)
        for (std::size_t b = a + 1; b < count; ++b)
            figures.push_back({"leakage_10kHz." + design.windings[a].name + "." + design.windings[b].name,
                               whileShorted(ends, static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)).imag() /
                                   (2 * std::numbers::pi * leakageFrequency),
                               "H",
                               std::hypot(0.1, context.stages().cut.leakage->spread),
                               "Im Z / omega at the first winding, second shorted, all else in; layer matrix by Roth's "
                               "double series in the window and image potential beyond it",
                               doubts.empty(),
                               doubts,
                               "",
                               {}});
}

}  // namespace analysis
