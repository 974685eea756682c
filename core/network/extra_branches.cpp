// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/extra_branches.h"

#include "network/dense.h"

namespace network {

void addBranches(Circuit& circuit, const ExtraBranches& extra) {
    const Eigen::Index before = circuit.turns.size(), added = extra.resistance.size(), all = before + added;
    if (added == 0) return;
    const auto longer = [&](Vector& values, const Vector& more) {
        Vector joined(all);
        joined << values, more;
        values = std::move(joined);
    };
    longer(circuit.turns, Vector::Zero(added));
    longer(circuit.resistance, extra.resistance);
    longer(circuit.bareDiameter, extra.bareDiameter);
    Matrix leakage(all, all);
    Matrix mutual = Matrix::Zero(before, added);
    if (extra.mutual.size() > 0) mutual.topRows(extra.mutual.rows()) = extra.mutual;
    leakage << circuit.leakage, mutual, mutual.transpose(), extra.inductance;
    circuit.leakage = std::move(leakage);
    for (auto& eddy : circuit.eddies) {
        Matrix form = Matrix::Zero(all, all);
        form.topLeftCorner(before, before) = eddy.form;
        eddy.form = std::move(form);
    }
    for (const auto& ends : extra.ends) {
        circuit.windingBranches.push_back(ends);
        circuit.windingOf.push_back(-1);
        circuit.sectionOf.emplace_back();
    }
}

ComplexMatrix withoutClosed(const Circuit& circuit, const ComplexMatrix& impedance) {
    std::vector<Eigen::Index> closed, open;
    for (std::size_t k = 0; k < circuit.windingBranches.size(); ++k) {
        const auto ends = circuit.windingBranches[k];
        (ends.from == ends.to ? closed : open).push_back(static_cast<Eigen::Index>(k));
    }
    if (closed.empty()) return impedance;
    const ComplexMatrix back = DenseFactors(impedance(closed, closed)).solve(impedance(closed, open));
    ComplexMatrix reduced = ComplexMatrix::Zero(impedance.rows(), impedance.cols());
    reduced(open, open) = impedance(open, open) - impedance(open, closed) * back;
    return reduced;
}

}  // namespace network
