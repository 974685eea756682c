// SPDX-License-Identifier: GPL-3.0-or-later
#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <numbers>

#include "exchange/terminal_model.h"

namespace exchange {

using network::Complex;
using network::ComplexMatrix;
using network::Matrix;
using network::Vector;

namespace {

constexpr Complex j{0, 1};
constexpr double leastRelaxation = 1e-9;  // of the largest mode

struct Mode {
    double weight = 0;
    Vector shape;
};
/// form = sum weight shape shape^T, weights above `leastRelaxation`.
std::vector<Mode> modes(const Matrix& form) {
    const Eigen::SelfAdjointEigenSolver<Matrix> solver(form);
    std::vector<Mode> all;
    const double largest = solver.eigenvalues()(form.rows() - 1);
    for (Eigen::Index k = form.rows() - 1; k >= 0 && solver.eigenvalues()(k) > leastRelaxation * largest; --k)
        all.push_back({solver.eigenvalues()(k), solver.eigenvectors().col(k)});
    return all;
}

double omega(double frequency) {
    return 2 * std::numbers::pi * frequency;
}

}  // namespace

FittedUnit::FittedUnit(const network::Circuit& unit, const UnitLosses& losses, std::vector<int> pins)
    : unit_(unit), losses_(losses), pins_(std::move(pins)) {
    std::vector<int> order = pins_;
    for (int n = 0; n < static_cast<int>(unit.nodes.size()); ++n)
        if (std::find(pins_.begin(), pins_.end(), n) == pins_.end()) order.push_back(n);
    const auto nodes = static_cast<Eigen::Index>(order.size());
    lossless_.resize(nodes, nodes);
    loss_.resize(nodes, nodes);
    incidence_ = Matrix::Zero(nodes, unit.turns.size());
    for (Eigen::Index i = 0; i < nodes; ++i) {
        const int own = order[static_cast<std::size_t>(i)];
        for (Eigen::Index k = 0; k < nodes; ++k) {
            const Complex c = unit.capacitance(own, order[static_cast<std::size_t>(k)]);
            lossless_(i, k) = c.real();
            loss_(i, k) = -c.imag();
        }
        for (Eigen::Index b = 0; b < unit.turns.size(); ++b) {
            const auto ends = unit.windingBranches[static_cast<std::size_t>(b)];
            if (ends.from == own) incidence_(i, b) += 1;
            if (ends.to == own) incidence_(i, b) -= 1;
        }
    }
    addLoops();
    addDielectric();
}

void FittedUnit::addLoops() {
    const Eigen::Index b = unit_.turns.size();
    std::vector<double> weights;
    for (const auto& loop : losses_.loops) {
        loopOf_.push_back({loop.shape, loop.tau, false});
        weights.push_back(loop.weight);
    }
    for (const auto& term : losses_.core.terms) {
        loopOf_.push_back({unit_.turns, term.tau, true});
        weights.push_back(term.weight);
    }
    const Eigen::Index m = b + static_cast<Eigen::Index>(weights.size());
    inductance_ = resistance_ = Matrix::Zero(m, m);
    inductance_.topLeftCorner(b, b) = losses_.leakage;
    resistance_.topLeftCorner(b, b) = unit_.resistance.asDiagonal();
    for (std::size_t k = 0; k < weights.size(); ++k) {
        const auto at = b + static_cast<Eigen::Index>(k);
        const auto& inner = loopOf_[k];
        const double r = weights[k] / inner.tau;
        inductance_(at, at) = weights[k];
        resistance_(at, at) = r;
        // The core's part is L parallel R in series with the turns; a loop is a shorted R and L beside them.
        auto& shared = inner.core ? resistance_ : inductance_;
        const double value = inner.core ? -r : weights[k];
        shared.col(at).head(b) = value * inner.shape;
        shared.row(at).head(b) = value * inner.shape.transpose();
        if (inner.core) resistance_.topLeftCorner(b, b) += r * inner.shape * inner.shape.transpose();
    }
}

void FittedUnit::addDielectric() {
    const Eigen::Index nodes = lossless_.rows();
    const auto shapes = loss_.cwiseAbs().maxCoeff() > 0 ? modes(loss_) : std::vector<Mode>();
    const auto& terms = losses_.dielectric.terms;
    const Eigen::Index all = nodes + static_cast<Eigen::Index>(shapes.size() * terms.size());
    capacitance_ = Matrix::Zero(all, all);
    conductance_ = Vector::Zero(all);
    capacitance_.topLeftCorner(nodes, nodes) = lossless_ + losses_.dielectric.constant * loss_;
    Eigen::Index at = nodes;
    for (const auto& term : terms)
        for (const auto& mode : shapes) {
            const double c = term.weight * mode.weight;
            capacitance_.topLeftCorner(nodes, nodes) += c * mode.shape * mode.shape.transpose();
            capacitance_.col(at).head(nodes) = -c * mode.shape;
            capacitance_.row(at).head(nodes) = -c * mode.shape.transpose();
            capacitance_(at, at) = c;
            conductance_(at++) = c / term.tau;
            relaxationOf_.push_back({mode.shape, term.tau, false});
        }
}

ComplexMatrix FittedUnit::windingAdmittance(double frequency) const {
    const double w = omega(frequency);
    const Complex core = losses_.core.at(frequency) - losses_.core.constant;
    ComplexMatrix z = (j * w) * losses_.leakage.cast<Complex>() +
                      (j * w * core) * (unit_.turns * unit_.turns.transpose()).cast<Complex>();
    z.diagonal() += unit_.resistance.cast<Complex>();
    for (const auto& loop : losses_.loops)
        z += w * w * loop.tau * loop.weight / Complex(1, w * loop.tau) *
             (loop.shape * loop.shape.transpose()).cast<Complex>();
    return z.inverse();
}

ComplexMatrix FittedUnit::nodal(double frequency) const {
    ComplexMatrix y =
        incidence_.cast<Complex>() * windingAdmittance(frequency) * incidence_.transpose().cast<Complex>();
    y +=
        (j * omega(frequency)) * (lossless_.cast<Complex>() + losses_.dielectric.at(frequency) * loss_.cast<Complex>());
    return y;
}

ComplexMatrix FittedUnit::innerVoltages(const ComplexMatrix& nodal) const {
    const auto p = static_cast<Eigen::Index>(pins_.size()), inner = nodal.rows() - p;
    return -nodal.bottomRightCorner(inner, inner).partialPivLu().solve(nodal.bottomLeftCorner(inner, p));
}

ComplexMatrix FittedUnit::admittance(double frequency) const {
    ComplexMatrix y = nodal(frequency);
    const auto p = static_cast<Eigen::Index>(pins_.size()), inner = y.rows() - p;
    if (inner == 0) return y;
    return y.topLeftCorner(p, p) + y.topRightCorner(p, inner) * innerVoltages(y);
}

ComplexMatrix FittedUnit::branchCurrents(const ComplexMatrix& voltages, double frequency) const {
    const double w = omega(frequency);
    const Eigen::Index b = unit_.turns.size();
    ComplexMatrix currents(inductance_.rows(), voltages.cols());
    currents.topRows(b) = windingAdmittance(frequency) * (incidence_.transpose().cast<Complex>() * voltages);
    for (std::size_t k = 0; k < loopOf_.size(); ++k) {
        const auto& inner = loopOf_[k];
        const Complex share = (inner.core ? 1.0 : -j * w * inner.tau) / Complex(1, w * inner.tau);
        currents.row(b + static_cast<Eigen::Index>(k)) =
            share * (inner.shape.transpose().cast<Complex>() * currents.topRows(b));
    }
    return currents;
}

ComplexMatrix FittedUnit::nodeVoltages(const ComplexMatrix& voltages, double frequency) const {
    const double w = omega(frequency);
    ComplexMatrix all(capacitance_.rows(), voltages.cols());
    all.topRows(voltages.rows()) = voltages;
    for (std::size_t k = 0; k < relaxationOf_.size(); ++k) {
        const auto& inner = relaxationOf_[k];
        all.row(voltages.rows() + static_cast<Eigen::Index>(k)) =
            j * w * inner.tau / Complex(1, w * inner.tau) * (inner.shape.transpose().cast<Complex>() * voltages);
    }
    return all;
}

}  // namespace exchange
