// SPDX-License-Identifier: GPL-3.0-or-later
// The one file where dense complex factorisations of the network are instantiated.
#include "network/solve.h"

#include <Eigen/LU>
#include <cassert>
#include <numbers>

#include "field/winding_loss.h"
#include "magnetics/permeability.h"

namespace network {

namespace {

constexpr Complex j{0, 1};

BranchEnds endsOf(const Circuit& c, Eigen::Index branch) {
    const auto b = static_cast<Eigen::Index>(c.windingBranches.size());
    return branch < b ? c.windingBranches[static_cast<std::size_t>(branch)]
                      : c.lumped[static_cast<std::size_t>(branch - b)].ends;
}

/// A^T X for the incidence A: difference of rows at the two ends of each branch.
ComplexMatrix alongBranches(const Circuit& c, const ComplexMatrix& perNode) {
    ComplexMatrix out = ComplexMatrix::Zero(c.branchCount(), perNode.cols());
    for (Eigen::Index k = 0; k < out.rows(); ++k) {
        const auto ends = endsOf(c, k);
        if (ends.from != earth) out.row(k) += perNode.row(ends.from);
        if (ends.to != earth) out.row(k) -= perNode.row(ends.to);
    }
    return out;
}

}  // namespace

Prepared::Prepared(Circuit circuit) : circuit_(std::move(circuit)) {
    const auto& c = circuit_;
    const Eigen::Index nodes = c.capacitance.rows(), branches = c.branchCount();
    const auto ports = static_cast<Eigen::Index>(c.ports.size());
    ComplexMatrix incidence = ComplexMatrix::Zero(nodes, branches);
    for (Eigen::Index k = 0; k < branches; ++k) {
        const auto ends = endsOf(c, k);
        if (ends.from != earth) incidence(ends.from, k) += 1;
        if (ends.to != earth) incidence(ends.to, k) -= 1;
    }
    ComplexMatrix into = ComplexMatrix::Zero(nodes, ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        if (port.plus != earth) into(port.plus, p) += 1;
        if (port.minus != earth) into(port.minus, p) -= 1;
    }
    if (nodes == 0) {
        elastance_ = ComplexMatrix::Zero(branches, branches);
        readOut_ = ComplexMatrix::Zero(ports, branches);
        injected_ = ComplexMatrix::Zero(ports, ports);
        return;
    }
    const Eigen::PartialPivLU<ComplexMatrix> factors(c.capacitance);
    const ComplexMatrix perBranch = factors.solve(incidence);
    elastance_ = alongBranches(c, perBranch);
    readOut_ = into.transpose() * perBranch;
    injected_ = into.transpose() * factors.solve(into);
}

ComplexMatrix Prepared::windingImpedance(double frequency) const {
    const auto& c = circuit_;
    const double w = 2 * std::numbers::pi * frequency;
    const Eigen::Index b = c.turns.size();
    ComplexMatrix z = (j * w) * c.leakage.cast<Complex>();
    const Complex core = j * w * magnetics::turnInductance(c.core, frequency);
    z += core * (c.turns * c.turns.transpose()).cast<Complex>();
    const double skin = magnetics::skinDepth(frequency, 1, c.resistivity);
    double lastDiameter = -1;
    double factor = 1;
    for (Eigen::Index k = 0; k < b; ++k) {
        if (c.bareDiameter(k) != lastDiameter) {
            lastDiameter = c.bareDiameter(k);
            factor = lastDiameter > 0 ? field::roundWireImpedanceFactor(lastDiameter / skin).real() : 1;
        }
        z(k, k) += c.resistance(k) * factor;
    }
    for (const auto& group : c.eddies)
        z += field::transverseFieldFactor(frequency, group.bareDiameter, c.resistivity) * group.form.cast<Complex>();
    return z;
}

ComplexVector Prepared::solve(double frequency) const {
    const auto& c = circuit_;
    const double w = 2 * std::numbers::pi * frequency;
    const Eigen::Index b = c.turns.size();
    const auto ports = static_cast<Eigen::Index>(c.ports.size());
    ComplexMatrix system = elastance_ / (j * w);
    system.topLeftCorner(b, b) += windingImpedance(frequency);
    for (std::size_t k = 0; k < c.lumped.size(); ++k) {
        const auto at = b + static_cast<Eigen::Index>(k);
        system(at, at) += impedance(c.lumped[k], frequency);
    }
    ComplexMatrix drive = ComplexMatrix::Zero(c.branchCount(), ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        for (std::size_t t = 0; t < port.through.size(); ++t) drive(b + port.through[t], p) = port.emfShare[t];
        if (port.through.empty()) drive.col(p) = readOut_.row(p).transpose() / (j * w);
    }
    const ComplexMatrix currents = Eigen::PartialPivLU<ComplexMatrix>(system).solve(drive);
    const auto where = layout();
    const Complex core = j * w * magnetics::turnInductance(c.core, frequency);
    ComplexVector out(where.size());
    for (int e = 0; e < where.ports; ++e) {
        const ComplexVector i = currents.col(e);
        for (int p = 0; p < where.ports; ++p) out(where.voltage(e, p)) = portVoltage(p, e, i, frequency);
        out(where.coreVoltage(e)) = core * c.turns.cast<Complex>().dot(i.head(b));
        out(where.impedance(e)) = portImpedance(e, i, out(where.voltage(e, e)), frequency);
        const auto& port = c.ports[static_cast<std::size_t>(e)];
        Complex own = 1;  // an injected ampere gives the impedance at once
        if (!port.through.empty()) {
            own = 0;
            for (const int t : port.through) own += impedance(c.lumped[static_cast<std::size_t>(t)], frequency);
        }
        out(where.totalImpedance(e)) = out(where.voltage(e, e)) * own;
    }
    return out;
}

Complex Prepared::portVoltage(int port, int excited, const ComplexVector& currents, double frequency) const {
    const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
    const auto b = circuit_.turns.size();
    const auto drop = [&](std::size_t t) {
        const auto k = static_cast<std::size_t>(p.through[t]);
        const Complex emf = port == excited ? p.emfShare[t] : 0.0;
        return emf - impedance(circuit_.lumped[k], frequency) * currents(b + static_cast<Eigen::Index>(k));
    };
    if (p.through.size() == 1) return drop(0);
    if (p.through.size() == 2) return drop(0) - drop(1);
    const double w = 2 * std::numbers::pi * frequency;
    Complex v = -readOut_.row(port).transpose().cwiseProduct(currents).sum();
    if (port == excited) v += injected_(port, port);
    else if (circuit_.ports[static_cast<std::size_t>(excited)].through.empty()) v += injected_(port, excited);
    return v / (j * w);
}

Complex Prepared::portImpedance(int port, const ComplexVector& currents, Complex voltage, double frequency) const {
    const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
    const auto b = circuit_.turns.size();
    const double w = 2 * std::numbers::pi * frequency;
    Complex into = 1;
    if (p.through.size() == 1) into = currents(b + p.through[0]);
    if (p.through.size() == 2) into = (currents(b + p.through[0]) - currents(b + p.through[1])) / 2.0;
    for (const int k : p.across) into -= voltage / impedance(circuit_.lumped[static_cast<std::size_t>(k)], frequency);
    into -= voltage * (j * w * p.acrossCapacitance);
    return voltage / into;
}

Complex parallelImpedance(const ComplexMatrix& paths) {
    const ComplexMatrix ones = ComplexMatrix::Ones(paths.rows(), 1);
    return 1.0 / Eigen::PartialPivLU<ComplexMatrix>(paths).solve(ones).sum();
}

}  // namespace network
