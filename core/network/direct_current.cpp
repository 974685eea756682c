// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/direct_current.h"

#include <Eigen/SparseCholesky>
#include <algorithm>

namespace network {

namespace {

constexpr double leastResistance = 1e-3;  // ohm
constexpr double leak = 1e-11;            // S

class Nodal {
public:
    explicit Nodal(std::size_t nodes) : count_(static_cast<int>(nodes)), known_(Vector::Zero(count_)) {
        for (int n = 0; n < count_; ++n) entries_.emplace_back(n, n, leak);
    }
    void join(BranchEnds ends, double resistance) {
        const double siemens = 1 / std::max(resistance, leastResistance);
        if (ends.from >= 0) entries_.emplace_back(ends.from, ends.from, siemens);
        if (ends.to >= 0) entries_.emplace_back(ends.to, ends.to, siemens);
        if (ends.from < 0 || ends.to < 0) return;
        entries_.emplace_back(ends.from, ends.to, -siemens);
        entries_.emplace_back(ends.to, ends.from, -siemens);
    }
    void inject(int node, double current) {
        if (node >= 0) known_(node) += current;
    }
    [[nodiscard]] Vector voltages() const {
        Eigen::SparseMatrix<double> matrix(count_, count_);
        matrix.setFromTriplets(entries_.begin(), entries_.end());
        return Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>>(matrix).solve(known_);
    }

private:
    int count_;
    std::vector<Eigen::Triplet<double>> entries_;
    Vector known_;
};

/// Resistance of a lumped branch for direct current; negative: none passes.
double directResistance(const LumpedBranch& branch) {
    if (!branch.table.empty()) return branch.share * branch.table.front().real;
    return branch.element.capacitance > 0 ? -1 : branch.share * branch.element.resistance;
}

}  // namespace

double directAmpereTurns(const Circuit& circuit, const DirectSupply& supply) {
    Nodal nodal(circuit.nodes.size());
    for (std::size_t k = 0; k < circuit.windingBranches.size(); ++k)
        nodal.join(circuit.windingBranches[k], circuit.resistance(static_cast<Eigen::Index>(k)));
    std::vector<bool> silent(circuit.lumped.size(), false);
    if (supply.withoutNetworkOf >= 0)
        for (const int k : circuit.ports[static_cast<std::size_t>(supply.withoutNetworkOf)].through)
            silent[static_cast<std::size_t>(k)] = true;
    for (std::size_t k = 0; k < circuit.lumped.size(); ++k)
        if (const double ohm = directResistance(circuit.lumped[k]); ohm >= 0 && !silent[k])
            nodal.join(circuit.lumped[k].ends, ohm);
    for (const DirectFeed& feed : supply.feeds) {
        nodal.join({feed.node, earth}, feed.resistance);
        nodal.inject(feed.node, feed.voltage / std::max(feed.resistance, leastResistance));
    }
    for (const DirectDrain& drain : supply.drains) nodal.inject(drain.node, -drain.current);
    for (const int node : supply.earthed) nodal.join({node, earth}, 0);
    const Vector voltages = nodal.voltages();
    const auto at = [&](int node) { return node < 0 ? 0.0 : voltages(node); };
    double sum = 0;
    for (std::size_t k = 0; k < circuit.windingBranches.size(); ++k) {
        const BranchEnds& ends = circuit.windingBranches[k];
        const auto i = static_cast<Eigen::Index>(k);
        sum += circuit.turns(i) * (at(ends.from) - at(ends.to)) / std::max(circuit.resistance(i), leastResistance);
    }
    return sum;
}

}  // namespace network
