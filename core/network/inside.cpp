// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/inside.h"

#include <numbers>

#include "network/dense.h"

namespace network {

namespace {

/// Rows of branches first, then of nodes.
class System {
public:
    System(const Circuit& c, Eigen::Index branches)
        : branches_(branches),
          matrix_(ComplexMatrix::Zero(branches + c.capacitance.rows(), branches + c.capacitance.rows())),
          right_(ComplexVector::Zero(matrix_.rows())) {}

    void branch(Eigen::Index k, BranchEnds ends) {
        connect(k, ends.from, 1);
        connect(k, ends.to, -1);
    }
    void inject(int node, double current) {
        if (node != earth) right_(branches_ + node) += current;
    }
    ComplexMatrix& matrix() { return matrix_; }
    ComplexVector& right() { return right_; }
    [[nodiscard]] ComplexVector solved() const { return DenseFactors(matrix_).solve(right_); }

private:
    void connect(Eigen::Index k, int node, double sign) {
        if (node == earth) return;
        matrix_(k, branches_ + node) -= sign;
        matrix_(branches_ + node, k) += sign;
    }
    Eigen::Index branches_;
    ComplexMatrix matrix_;
    ComplexVector right_;
};

}  // namespace

Inside inside(const Prepared& network, double frequency, int excited, int shorted) {
    const Circuit& c = network.circuit();
    const auto windings = c.turns.size(), nodes = c.capacitance.rows();
    const Eigen::Index branches = c.branchCount() + (shorted >= 0 ? 1 : 0);
    System system(c, branches);
    system.matrix().topLeftCorner(windings, windings) = windingImpedance(c, frequency);
    for (Eigen::Index k = 0; k < windings; ++k) system.branch(k, c.windingBranches[static_cast<std::size_t>(k)]);
    for (std::size_t k = 0; k < c.lumped.size(); ++k) {
        const auto row = windings + static_cast<Eigen::Index>(k);
        system.matrix()(row, row) = impedance(c.lumped[k], frequency);
        system.branch(row, c.lumped[k].ends);
    }
    if (shorted >= 0) {
        const auto& port = c.ports[static_cast<std::size_t>(shorted)];
        system.branch(branches - 1, {port.plus, port.minus});
    }
    const Complex jw(0, 2 * std::numbers::pi * frequency);
    system.matrix().bottomRightCorner(nodes, nodes) = jw * c.capacitance;
    const auto& port = c.ports[static_cast<std::size_t>(excited)];
    for (std::size_t t = 0; t < port.through.size(); ++t) system.right()(windings + port.through[t]) = port.emfShare[t];
    if (port.through.empty()) {
        system.inject(port.plus, 1);
        system.inject(port.minus, -1);
    }
    const ComplexVector x = system.solved();
    Inside result{x.head(branches), x.tail(nodes), port.through.empty() ? Complex(1) : x(windings + port.through[0])};
    for (const int k : port.across) result.intoUnit -= x(windings + k);
    return result;
}

}  // namespace network
