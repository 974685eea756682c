// SPDX-License-Identifier: GPL-3.0-or-later
// Branch currents as currents around loops and currents that charge nodes.
#pragma once

#include <Eigen/SparseCore>

#include "network/circuit.h"

namespace network {

/// Branch currents are `columns` times a state. The first `loops` of its numbers run around loops and charge no node;
/// each of the others runs in one branch of a tree that reaches every node (fundamental cycles of a spanning forest,
/// any text on circuit theory), and on through nodes on the way to its root that have next to no capacitance. All
/// entries are 0, 1 or -1, so that a loop's charge is exactly nothing.
struct LoopsAndTree {
    Eigen::SparseMatrix<double> columns;  ///< branches x branches
    Eigen::Index loops = 0;
};

/// Of winding branches, then lumped ones. The tree is grown from earth, then from each node that is not reached, by the
/// fewest branches.
[[nodiscard]] LoopsAndTree loopsAndTree(const Circuit& circuit);

/// Q^T M Q, M symmetric; M may stand for the first rows of Q alone.
[[nodiscard]] Matrix congruent(const Eigen::SparseMatrix<double>& q, const Matrix& m);

}  // namespace network
