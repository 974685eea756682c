// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/solve.h"

#include <Eigen/Cholesky>

#include "network/dense.h"
#include "network/loops.h"
#include "network/symmetric.h"

namespace network {

namespace {

Eigen::SparseMatrix<double> incidenceOf(const Circuit& c) {
    std::vector<Eigen::Triplet<double>> entries;
    const auto take = [&](BranchEnds ends, Eigen::Index k) {
        if (ends.from != earth) entries.emplace_back(ends.from, k, 1);
        if (ends.to != earth) entries.emplace_back(ends.to, k, -1);
    };
    Eigen::Index k = 0;
    for (const auto& ends : c.windingBranches) take(ends, k++);
    for (const auto& branch : c.lumped) take(branch.ends, k++);
    Eigen::SparseMatrix<double> incidence(c.capacitance.rows(), c.branchCount());
    incidence.setFromTriplets(entries.begin(), entries.end());
    return incidence;
}

/// Real and imaginary part of sum c_k T_k.
struct Gathered {
    Matrix real, imaginary;
};

Gathered gathered(const Terms& terms, const std::vector<Complex>& coefficient) {
    const Eigen::Index n = terms.front().matrix.rows();
    Gathered all{Matrix::Zero(n, n), Matrix::Zero(n, n)};
    for (std::size_t k = 0; k < terms.size(); ++k) {
        if (coefficient[k].real() != 0) all.real += coefficient[k].real() * terms[k].matrix;
        if (coefficient[k].imag() != 0) all.imaginary += coefficient[k].imag() * terms[k].matrix;
    }
    return all;
}

/// C^-1 Q: in real numbers, without an imaginary part, where nothing is lost in the capacitances.
Gathered potentialsOf(const ComplexMatrix& capacitance, const Matrix& charges) {
    if (capacitance.imag().isZero(0)) {
        const Eigen::LLT<Matrix> factors(capacitance.real());
        if (factors.info() == Eigen::Success) return {factors.solve(charges), {}};
    }
    const ComplexMatrix all = DenseFactors(capacitance).solve(charges.cast<Complex>());
    return {all.real(), all.imag()};
}

/// Q^T (C^-1 Q), Q of few entries.
ComplexMatrix joined(const Matrix& charges, const Gathered& potentials) {
    const Eigen::SparseMatrix<double> rows = charges.sparseView();
    ComplexMatrix all = ComplexMatrix::Zero(charges.cols(), charges.cols());
    all.real() = rows.transpose() * potentials.real;
    if (potentials.imaginary.size() > 0) all.imag() = rows.transpose() * potentials.imaginary;
    return all;
}

SymmetricFactors factored(const Terms& terms, const std::vector<Complex>& coefficient) {
    Gathered all = gathered(terms, coefficient);
    return {std::move(all.real), std::move(all.imaginary)};
}

}  // namespace

ComplexMatrix windingImpedance(const Circuit& circuit, double frequency) {
    // The same terms in plain branch currents, without capacitances and lumped branches.
    Circuit bare = circuit;
    bare.lumped.clear();
    const Eigen::Index b = bare.turns.size();
    Eigen::SparseMatrix<double> each(b, b);
    each.setIdentity();
    const Terms own = termsOf(bare, each, ComplexMatrix::Zero(b, b));
    const Gathered z = gathered(own, coefficients(own, bare, frequency));
    ComplexMatrix all(b, b);
    all.real() = z.real;
    all.imag() = z.imaginary;
    return all;
}

Prepared::Prepared(Circuit circuit, Currents currents) : circuit_(std::move(circuit)) {
    const auto& c = circuit_;
    const Eigen::Index branches = c.branchCount(), b = c.turns.size();
    LoopsAndTree split;
    if (currents == Currents::LoopsAndTree) {
        split = loopsAndTree(c);
    } else {
        split.columns.resize(branches, branches);
        split.columns.setIdentity();
    }
    basis_ = split.columns;
    loops_ = split.loops;
    terms_ = termsOf(c, split.columns, takeCapacitances(split.columns));
    reading_.lumped = basis_.bottomRows(branches - b).cast<Complex>();
    reading_.turns = (c.turns.transpose() * basis_.topRows(b)).cast<Complex>();
}

/// A^T C^-1 A in the basis, and what the ports read of the charges.
ComplexMatrix Prepared::takeCapacitances(const Eigen::SparseMatrix<double>& columns) {
    const auto& c = circuit_;
    const Eigen::Index nodes = c.capacitance.rows(), branches = c.branchCount();
    const auto ports = static_cast<Eigen::Index>(c.ports.size());
    reading_.charges = ComplexMatrix::Zero(ports, branches);
    reading_.injected = ComplexMatrix::Zero(ports, ports);
    if (nodes == 0) return ComplexMatrix::Zero(branches, branches);
    Matrix into = Matrix::Zero(nodes, ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        if (port.plus != earth) into(port.plus, p) += 1;
        if (port.minus != earth) into(port.minus, p) -= 1;
    }
    Matrix both(nodes, branches + ports);
    both << Matrix(incidenceOf(c) * columns), into;
    const ComplexMatrix all = joined(both, potentialsOf(c.capacitance, both));
    reading_.charges = all.bottomLeftCorner(ports, branches);
    reading_.injected = all.bottomRightCorner(ports, ports);
    const auto elastance = all.topLeftCorner(branches, branches);
    return (elastance + elastance.transpose()) / 2.0;
}

ComplexVector Prepared::solve(double frequency) const {
    const auto factors = factored(terms_, coefficients(terms_, circuit_, frequency));
    return outputs(circuit_, reading_, factors.solve(drive(circuit_, reading_, frequency)), frequency);
}

Snapshot Prepared::snapshot(double frequency) const {
    const auto factors = factored(terms_, coefficients(terms_, circuit_, frequency));
    const double above = frequency * (1 + slopeStep), below = frequency * (1 - slopeStep);
    auto change = coefficients(terms_, circuit_, above);
    const auto before = coefficients(terms_, circuit_, below);
    for (std::size_t k = 0; k < change.size(); ++k) change[k] -= before[k];
    ComplexMatrix state = factors.solve(drive(circuit_, reading_, frequency));
    const ComplexMatrix right = drive(circuit_, reading_, above) - drive(circuit_, reading_, below);
    const Gathered all = gathered(terms_, change);
    const ComplexMatrix slopeRight = right - product(all.real, all.imaginary, state);
    ComplexMatrix slope = factors.solve(slopeRight, SymmetricFactors::sound) / (2 * slopeStep);
    return {frequency, std::move(state), std::move(slope)};
}

Point pointOf(const Circuit& circuit, const Reading& reading, const Snapshot& at) {
    const double f = at.frequency;
    const auto near = [&](double step) -> ComplexVector {
        return outputs(circuit, reading, at.state + step * at.slope, f * (1 + step));
    };
    return {f, outputs(circuit, reading, at.state, f), (near(slopeStep) - near(-slopeStep)) / (2 * slopeStep)};
}

}  // namespace network
