// SPDX-License-Identifier: GPL-3.0-or-later
// The one file where dense complex factorisations of the network are instantiated.
#include "network/solve.h"

#include <Eigen/LU>
#include <Eigen/QR>
#include <algorithm>
#include <numbers>

#include "field/winding_loss.h"
#include "magnetics/permeability.h"

namespace network {

namespace {

constexpr Complex j{0, 1};

Matrix incidenceOf(const Circuit& c) {
    Matrix incidence = Matrix::Zero(c.capacitance.rows(), c.branchCount());
    const auto take = [&](BranchEnds ends, Eigen::Index k) {
        if (ends.from != earth) incidence(ends.from, k) += 1;
        if (ends.to != earth) incidence(ends.to, k) -= 1;
    };
    Eigen::Index k = 0;
    for (const auto& ends : c.windingBranches) take(ends, k++);
    for (const auto& branch : c.lumped) take(branch.ends, k++);
    return incidence;
}

/// Resistance of round wire against its direct-current value, by skin effect alone.
double skinFactor(double bareDiameter, double frequency, double resistivity) {
    if (bareDiameter <= 0) return 1;
    return field::roundWireImpedanceFactor(bareDiameter / magnetics::skinDepth(frequency, 1, resistivity)).real();
}

}  // namespace

Prepared::Prepared(Circuit circuit) : circuit_(std::move(circuit)) {
    const auto& c = circuit_;
    const Matrix incidence = incidenceOf(c);
    const Eigen::ColPivHouseholderQR<Matrix> split(incidence.transpose());
    const Eigen::Index rank = split.rank(), branches = c.branchCount(), b = c.turns.size();
    loops_ = branches - rank;
    const Matrix all = split.householderQ() * Matrix::Identity(branches, branches);
    basis_.resize(branches, branches);
    basis_ << all.rightCols(loops_), all.leftCols(rank);
    const Matrix windings = basis_.topRows(b);
    leakage_ = windings.transpose() * c.leakage * windings;
    turns_ = windings.transpose() * c.turns;
    takeLosses();
    takeCapacitances();
}

void Prepared::takeLosses() {
    const auto& c = circuit_;
    const Matrix windings = basis_.topRows(c.turns.size());
    for (Eigen::Index k = 0; k < c.turns.size(); ++k) {
        auto at = std::find_if(losses_.begin(), losses_.end(),
                               [&](const auto& g) { return g.bareDiameter == c.bareDiameter(k); });
        if (at == losses_.end()) {
            losses_.push_back({c.bareDiameter(k), Matrix::Zero(basis_.rows(), basis_.cols()), {}});
            at = losses_.end() - 1;
        }
        at->direct += c.resistance(k) * windings.row(k).transpose() * windings.row(k);
    }
    for (const auto& eddy : c.eddies)
        for (auto& group : losses_)
            if (group.bareDiameter == eddy.bareDiameter) group.eddy = windings.transpose() * eddy.form * windings;
}

void Prepared::takeCapacitances() {
    const auto& c = circuit_;
    const Eigen::Index nodes = c.capacitance.rows(), branches = c.branchCount();
    const auto ports = static_cast<Eigen::Index>(c.ports.size());
    elastance_ = ComplexMatrix::Zero(branches, branches);
    readOut_ = ComplexMatrix::Zero(ports, branches);
    injected_ = ComplexMatrix::Zero(ports, ports);
    if (nodes == 0) return;
    Matrix into = Matrix::Zero(nodes, ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        if (port.plus != earth) into(port.plus, p) += 1;
        if (port.minus != earth) into(port.minus, p) -= 1;
    }
    Matrix charging = incidenceOf(c) * basis_;
    charging.leftCols(loops_).setZero();  // what is left there is rounding
    const Eigen::PartialPivLU<ComplexMatrix> factors(c.capacitance);
    const ComplexMatrix potentials = factors.solve(charging.cast<Complex>());
    elastance_ = charging.transpose().cast<Complex>() * potentials;
    readOut_ = into.transpose().cast<Complex>() * potentials;
    injected_ = into.transpose().cast<Complex>() * factors.solve(into.cast<Complex>());
}

ComplexMatrix Prepared::windingImpedance(double frequency) const {
    const auto& c = circuit_;
    const double w = 2 * std::numbers::pi * frequency;
    ComplexMatrix z = (j * w) * c.leakage.cast<Complex>();
    z += (j * w * magnetics::turnInductance(c.core, frequency)) * (c.turns * c.turns.transpose()).cast<Complex>();
    for (Eigen::Index k = 0; k < c.turns.size(); ++k)
        z(k, k) += c.resistance(k) * skinFactor(c.bareDiameter(k), frequency, c.resistivity);
    for (const auto& group : c.eddies)
        z += field::transverseFieldFactor(frequency, group.bareDiameter, c.resistivity) * group.form.cast<Complex>();
    return z;
}

ComplexMatrix Prepared::systemAt(double frequency) const {
    const auto& c = circuit_;
    const double w = 2 * std::numbers::pi * frequency;
    const Eigen::Index b = c.turns.size();
    const Complex core = j * w * magnetics::turnInductance(c.core, frequency);
    // Real and imaginary parts are gathered apart: elements are then never multiplied or divided as complex numbers.
    Matrix real = core.real() * turns_ * turns_.transpose() + elastance_.imag() / w;
    Matrix imaginary = w * leakage_ + core.imag() * turns_ * turns_.transpose() - elastance_.real() / w;
    for (const auto& group : losses_) {
        real += skinFactor(group.bareDiameter, frequency, c.resistivity) * group.direct;
        if (group.eddy.size() == 0) continue;
        const Complex eddy = field::transverseFieldFactor(frequency, group.bareDiameter, c.resistivity);
        real += eddy.real() * group.eddy;
        imaginary += eddy.imag() * group.eddy;
    }
    for (std::size_t k = 0; k < c.lumped.size(); ++k) {
        const Vector row = basis_.row(b + static_cast<Eigen::Index>(k)).transpose();
        const Complex z = impedance(c.lumped[k], frequency);
        real += z.real() * row * row.transpose();
        imaginary += z.imag() * row * row.transpose();
    }
    ComplexMatrix system(real.rows(), real.cols());
    system.real() = real;
    system.imag() = imaginary;
    return system;
}

ComplexMatrix Prepared::driveAt(double frequency) const {
    const double w = 2 * std::numbers::pi * frequency;
    const auto ports = static_cast<Eigen::Index>(circuit_.ports.size());
    const Eigen::Index b = circuit_.turns.size();
    ComplexMatrix drive = ComplexMatrix::Zero(basis_.rows(), ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = circuit_.ports[static_cast<std::size_t>(p)];
        for (std::size_t t = 0; t < port.through.size(); ++t)
            drive.col(p) += port.emfShare[t] * basis_.row(b + port.through[t]).transpose().cast<Complex>();
        if (port.through.empty()) drive.col(p) = readOut_.row(p).transpose() / (j * w);
    }
    return drive;
}

ComplexVector Prepared::solve(double frequency) const {
    return outputs(Eigen::PartialPivLU<ComplexMatrix>(systemAt(frequency)).solve(driveAt(frequency)), frequency);
}

Point Prepared::point(double frequency) const {
    const Eigen::PartialPivLU<ComplexMatrix> factors(systemAt(frequency));
    const ComplexMatrix loops = factors.solve(driveAt(frequency));
    // Slopes of the coefficients by a central difference, exact to 1e-8; no second factorisation.
    constexpr double step = 1e-4;
    const double above = frequency * (1 + step), below = frequency * (1 - step);
    const ComplexMatrix change = (driveAt(above) - driveAt(below)) - (systemAt(above) - systemAt(below)) * loops;
    const ComplexMatrix half = factors.solve(change) / 2.0;  // of the loops' change from below to above
    return {frequency, outputs(loops, frequency),
            (outputs(loops + half, above) - outputs(loops - half, below)) / (2 * step)};
}

ComplexVector Prepared::outputs(const ComplexMatrix& loops, double frequency) const {
    const auto& c = circuit_;
    const double w = 2 * std::numbers::pi * frequency;
    const ComplexMatrix lumped = basis_.bottomRows(basis_.rows() - c.turns.size()).cast<Complex>() * loops;
    const auto where = layout();
    const Complex core = j * w * magnetics::turnInductance(c.core, frequency);
    ComplexVector out(where.size());
    for (int e = 0; e < where.ports; ++e) {
        for (int p = 0; p < where.ports; ++p)
            out(where.voltage(e, p)) = portVoltage(p, e, lumped.col(e), loops.col(e), frequency);
        out(where.coreVoltage(e)) = core * turns_.cast<Complex>().cwiseProduct(loops.col(e)).sum();
        const auto& port = c.ports[static_cast<std::size_t>(e)];
        if (port.common) {  // both terminals move together: no impedance between them is meant
            out(where.impedance(e)) = out(where.totalImpedance(e)) = 0;
            continue;
        }
        out(where.impedance(e)) = portImpedance(e, lumped.col(e), out(where.voltage(e, e)), frequency);
        // An injected ampere gives the impedance at once.
        const Complex own = port.through.empty() ? 1 : throughImpedance(c, e, frequency);
        out(where.totalImpedance(e)) = out(where.voltage(e, e)) * own;
    }
    return out;
}

Complex Prepared::portVoltage(int port, int excited, const ComplexVector& lumped, const ComplexVector& loops,
                              double frequency) const {
    const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
    // EMFs and drops are summed apart: in common mode the EMFs cancel and must leave no rounding behind.
    const auto emf = [&](std::size_t t) { return port == excited ? p.emfShare[t] : 0.0; };
    const auto drop = [&](std::size_t t) {
        return impedance(circuit_.lumped[static_cast<std::size_t>(p.through[t])], frequency) * lumped(p.through[t]);
    };
    if (p.through.size() == 1) return emf(0) - drop(0);
    if (p.through.size() == 2) return (emf(0) - emf(1)) - (drop(0) - drop(1));
    const double w = 2 * std::numbers::pi * frequency;
    Complex v = -readOut_.row(port).transpose().cwiseProduct(loops).sum();
    if (circuit_.ports[static_cast<std::size_t>(excited)].through.empty()) v += injected_(port, excited);
    return v / (j * w);
}

Complex Prepared::portImpedance(int port, const ComplexVector& lumped, Complex voltage, double frequency) const {
    const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
    const double w = 2 * std::numbers::pi * frequency;
    Complex into = 1;
    if (p.through.size() == 1) into = lumped(p.through[0]);
    if (p.through.size() == 2) into = (lumped(p.through[0]) - lumped(p.through[1])) / 2.0;
    for (const int k : p.across) into -= voltage / impedance(circuit_.lumped[static_cast<std::size_t>(k)], frequency);
    into -= voltage * (j * w * p.acrossCapacitance);
    return voltage / into;
}

Complex parallelImpedance(const ComplexMatrix& paths) {
    const ComplexMatrix ones = ComplexMatrix::Ones(paths.rows(), 1);
    return 1.0 / Eigen::PartialPivLU<ComplexMatrix>(paths).solve(ones).sum();
}

}  // namespace network
