// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/solve.h"

#include <Eigen/Cholesky>
#include <Eigen/QR>

#include "network/dense.h"
#include "network/symmetric.h"

namespace network {

namespace {

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

ComplexMatrix joined(const Matrix& rows, const Gathered& columns) {
    ComplexMatrix all = ComplexMatrix::Zero(rows.rows(), columns.real.cols());
    all.real() = rows * columns.real;
    if (columns.imaginary.size() > 0) all.imag() = rows * columns.imaginary;
    return all;
}

SymmetricFactors factored(const Terms& terms, const std::vector<Complex>& coefficient) {
    Gathered all = gathered(terms, coefficient);
    return {std::move(all.real), std::move(all.imaginary)};
}

}  // namespace

Prepared::Prepared(Circuit circuit, Currents currents) : circuit_(std::move(circuit)) {
    const auto& c = circuit_;
    const Eigen::Index branches = c.branchCount(), b = c.turns.size();
    basis_ = Matrix::Identity(branches, branches);
    if (currents == Currents::LoopsAndRest) {
        const Eigen::ColPivHouseholderQR<Matrix> split(incidenceOf(c).transpose());
        const Matrix all = split.householderQ() * basis_;
        loops_ = branches - split.rank();
        basis_ << all.rightCols(loops_), all.leftCols(split.rank());
    }
    terms_ = termsOf(c, basis_, takeCapacitances());
    reading_.lumped = basis_.bottomRows(branches - b).cast<Complex>();
    reading_.turns = (c.turns.transpose() * basis_.topRows(b)).cast<Complex>();
}

/// A^T C^-1 A in the basis, and what the ports read of the charges.
ComplexMatrix Prepared::takeCapacitances() {
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
    Matrix charging = incidenceOf(c) * basis_;
    charging.leftCols(loops_).setZero();  // what is left there is rounding
    Matrix both(nodes, branches + ports);
    both << charging, into;
    const ComplexMatrix all = joined(both.transpose(), potentialsOf(c.capacitance, both));
    reading_.charges = all.bottomLeftCorner(ports, branches);
    reading_.injected = all.bottomRightCorner(ports, ports);
    const auto elastance = all.topLeftCorner(branches, branches);
    return (elastance + elastance.transpose()) / 2.0;
}

ComplexMatrix Prepared::windingImpedance(double frequency) const {
    // The same terms in plain branch currents, without capacitances and lumped branches.
    Circuit bare = circuit_;
    bare.lumped.clear();
    const Eigen::Index b = bare.turns.size();
    const Terms own = termsOf(bare, Matrix::Identity(b, b), ComplexMatrix::Zero(b, b));
    const auto coefficient = coefficients(own, bare, frequency);
    ComplexMatrix z = ComplexMatrix::Zero(b, b);
    for (std::size_t k = 0; k < own.size(); ++k) z += coefficient[k] * own[k].matrix.cast<Complex>();
    return z;
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
    ComplexMatrix slope = factors.solve(right - product(all.real, all.imaginary, state)) / (2 * slopeStep);
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
