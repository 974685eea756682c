// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/terminal_model.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "network/ladders.h"

namespace exchange {

using network::Complex;
using network::ComplexMatrix;
using network::Matrix;
using network::Vector;

namespace {

using Eigen::Index;

/// Cholesky factor; the metric is brought to an even diagonal first, for its units span many decades.
Matrix factorOf(const Matrix& metric) {
    const Vector scale = metric.diagonal().cwiseSqrt();
    const Vector inverse = scale.cwiseInverse();
    const Matrix even = inverse.asDiagonal() * metric * inverse.asDiagonal();
    return scale.asDiagonal() * Matrix(even.llt().matrixL());
}

/// Adds squares of real and imaginary parts, each sample by the size of the whole it belongs to.
void addSquares(Matrix& sum, const ComplexMatrix& samples, const Vector& size) {
    for (Index k = 0; k < samples.cols(); ++k) {
        if (size(k) <= 0) continue;
        const Matrix parts = (Matrix(samples.rows(), 2) << samples.col(k).real(), samples.col(k).imag()).finished();
        sum += parts * parts.transpose() / (size(k) * size(k));
    }
}

Vector columnNorms(const ComplexMatrix& m) {
    return m.colwise().norm().transpose();
}

Index sizeFor(const Vector& rising, double share, const std::vector<Index>& avoid) {
    const Index all = rising.size();
    const double least = share * share * rising(all - 1);
    Index size = std::count_if(rising.data(), rising.data() + all, [&](double w) { return w > least; });
    while (size < all && std::find(avoid.begin(), avoid.end(), size) != avoid.end()) ++size;
    while (size > 0 && std::find(avoid.begin(), avoid.end(), size) != avoid.end()) --size;
    return size;
}

/// Every column's largest entry among its first `rows` becomes 1 in size.
Vector scaling(const Matrix& columns, Index rows) {
    Vector scale(columns.cols());
    for (Index k = 0; k < columns.cols(); ++k)
        scale(k) = 1 / std::max(1e-30, columns.col(k).head(rows).cwiseAbs().maxCoeff());
    return scale;
}

}  // namespace

Reduction::Reduction(const FittedUnit& unit) : unit_(unit) {
    const auto p = static_cast<Index>(unit.pins_.size());
    const Index all = unit.capacitance_.rows(), nodes = unit.incidence_.rows(), inner = nodes - p;
    currentFactor_ = factorOf(unit.inductance_);
    voltageFactor_ = factorOf(unit.capacitance_.bottomRightCorner(all - p, all - p));
    currentSquares_ = Matrix::Zero(unit.inductance_.rows(), unit.inductance_.rows());
    voltageSquares_ = Matrix::Zero(all - p, all - p);
    standing_ = Matrix::Zero(all, p);
    standing_.topRows(p).setIdentity();
    // At standstill voltages divide by resistance; what no winding reaches, by capacitance.
    const Vector conductances = unit.unit_.resistance.cwiseMax(1e-9).cwiseInverse();
    Matrix still = unit.incidence_ * conductances.asDiagonal() * unit.incidence_.transpose();
    still += 1e-13 * still.diagonal().maxCoeff() / unit.lossless_.diagonal().maxCoeff() * unit.lossless_;
    if (inner > 0)
        standing_.middleRows(p, inner) =
            -still.bottomRightCorner(inner, inner).ldlt().solve(still.bottomLeftCorner(inner, p));
    for (const double f : {0.01, 1.0}) sample(f);
    for (double f = 10; f < 1.3e6; f *= f < 9e3 ? std::pow(10, 0.2) : std::pow(10, 0.1)) sample(f);
    const Eigen::SelfAdjointEigenSolver<Matrix> currents(currentSquares_), voltages(voltageSquares_);
    currentShapes_ = currents.eigenvectors();
    currentWeights_ = currents.eigenvalues();
    voltageShapes_ = voltages.eigenvectors();
    voltageWeights_ = voltages.eigenvalues();
}

void Reduction::sample(double frequency) {
    const auto p = static_cast<Index>(unit_.pins_.size());
    const ComplexMatrix y = unit_.nodal(frequency), inner = unit_.innerVoltages(y);
    const ComplexMatrix atPins = y.topLeftCorner(p, p) + y.topRightCorner(p, y.rows() - p) * inner;
    // Each pin alone at a volt; each galvanic island as a whole; currents from pin to pin of an island and to earth.
    const auto islands = network::ladders(unit_.unit_).island;
    std::vector<Vector> voltages, currents;
    for (Index k = 0; k < p; ++k) {
        const int own = islands[static_cast<std::size_t>(unit_.pins_[static_cast<std::size_t>(k)])];
        Vector island = Vector::Zero(p);
        Index first = p;
        for (Index i = p - 1; i >= 0; --i)
            if (islands[static_cast<std::size_t>(unit_.pins_[static_cast<std::size_t>(i)])] == own) {
                island(i) = 1;
                first = i;
            }
        voltages.push_back(Vector::Unit(p, k));
        currents.push_back(Vector::Unit(p, k));
        if (first == k)
            voltages.push_back(island);
        else
            currents.push_back(Vector::Unit(p, k) - Vector::Unit(p, first));
    }
    ComplexMatrix drive(p, static_cast<Index>(voltages.size() + currents.size()));
    for (std::size_t k = 0; k < voltages.size(); ++k) drive.col(static_cast<Index>(k)) = voltages[k].cast<Complex>();
    const Eigen::PartialPivLU<ComplexMatrix> factors(atPins);
    for (std::size_t k = 0; k < currents.size(); ++k)
        drive.col(static_cast<Index>(voltages.size() + k)) = factors.solve(currents[k].cast<Complex>());
    ComplexMatrix nodes(y.rows(), drive.cols());
    nodes << drive, inner * drive;
    const ComplexMatrix i = currentFactor_.transpose().cast<Complex>() * unit_.branchCurrents(nodes, frequency);
    addSquares(currentSquares_, i, columnNorms(i));
    const Index free = voltageFactor_.rows();
    const ComplexMatrix all = unit_.nodeVoltages(nodes, frequency);
    const ComplexMatrix metric = voltageFactor_.transpose().cast<Complex>();
    const ComplexMatrix rest = all - standing_.cast<Complex>() * drive;
    addSquares(voltageSquares_, metric * rest.bottomRows(free), columnNorms(metric * all.bottomRows(free)));
}

TerminalModel Reduction::model(double share, const std::vector<Index>& avoid) const {
    const auto p = static_cast<Index>(unit_.pins_.size());
    const Index m = sizeFor(currentWeights_, share, avoid), q = sizeFor(voltageWeights_, share, avoid);
    const Index all = unit_.capacitance_.rows(), nodes = unit_.incidence_.rows();
    Matrix currents = currentFactor_.transpose().triangularView<Eigen::Upper>().solve(currentShapes_.rightCols(m));
    const Eigen::SelfAdjointEigenSolver<Matrix> decay(currents.transpose() * unit_.resistance_ * currents);
    currents = currents * decay.eigenvectors();

    Matrix inner = voltageFactor_.transpose().triangularView<Eigen::Upper>().solve(voltageShapes_.rightCols(q));
    const Vector innerLoss = unit_.conductance_.tail(all - p);
    const Eigen::SelfAdjointEigenSolver<Matrix> relax(inner.transpose() * innerLoss.asDiagonal() * inner);
    inner = inner * relax.eigenvectors();
    const Vector nodeScale = scaling(inner, nodes - p);
    Matrix basis = Matrix::Zero(all, p + q);
    basis.leftCols(p) = standing_;
    basis.bottomRightCorner(all - p, q) = inner * nodeScale.asDiagonal();

    TerminalModel made;
    made.pins = p;
    made.capacitance = basis.transpose() * unit_.capacitance_ * basis;
    made.capacitance.bottomRightCorner(q, q) = Matrix(nodeScale.cwiseAbs2().asDiagonal());
    made.conductance = Vector::Zero(p + q);
    made.conductance.tail(q) = nodeScale.cwiseAbs2().cwiseProduct(relax.eigenvalues().cwiseMax(0));
    made.coupling = basis.topRows(nodes).transpose() * (unit_.incidence_ * currents.topRows(unit_.incidence_.cols()));
    const Vector branchScale = scaling(made.coupling, p + q);
    made.coupling = made.coupling * branchScale.asDiagonal();
    made.inductance = branchScale.cwiseAbs2();
    made.resistance = branchScale.cwiseAbs2().cwiseProduct(decay.eigenvalues().cwiseMax(0));
    return made;
}

ComplexMatrix TerminalModel::admittance(double frequency) const {
    const double w = 2 * std::numbers::pi * frequency;
    ComplexMatrix y = Complex(0, w) * capacitance.cast<Complex>();
    y.diagonal() += conductance.cast<Complex>();
    const Eigen::VectorXcd each =
        (resistance.cast<Complex>() + Complex(0, w) * inductance.cast<Complex>()).cwiseInverse();
    y += coupling.cast<Complex>() * each.asDiagonal() * coupling.transpose().cast<Complex>();
    const Index q = y.rows() - pins;
    if (q == 0) return y;
    return y.topLeftCorner(pins, pins) -
           y.topRightCorner(pins, q) * y.bottomRightCorner(q, q).partialPivLu().solve(y.bottomLeftCorner(q, pins));
}

}  // namespace exchange
