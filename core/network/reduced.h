// SPDX-License-Identifier: GPL-3.0-or-later
// A network between solved frequencies, in the space that their states span.
#pragma once

#include <optional>
#include <vector>

#include "network/solve.h"

namespace network {

/// Galerkin's projection of S x = d on the states at solved frequencies: (V^T S V) y = V^T d, x = V y, V orthonormal
/// (any text on model order reduction; transposed, not conjugated, since S is symmetric: the error of every output
/// between excited ports is then of second order in the residual S V y - d). The residual of each answer is estimated
/// from its products with a few fixed vectors.
class Reduced {
public:
    /// `solved` are the network's own snapshots, two at least; `network` must outlive this.
    Reduced(const Prepared& network, const std::vector<Snapshot>& solved);
    /// Whether the space is small enough against the whole to save work.
    [[nodiscard]] bool worthwhile() const noexcept;
    /// All outputs with slopes; nothing where the residual says that the space does not reach so far.
    [[nodiscard]] std::optional<Point> point(double frequency) const;
    [[nodiscard]] Eigen::Index size() const noexcept { return basis_.cols(); }

    static constexpr double enough = 1e-4;  ///< residual against the right side, each over the root of S's diagonal

private:
    struct Systems {
        ComplexMatrix own;    ///< [V, G]^T S V, (r + probes) x r
        ComplexMatrix slope;  ///< V^T S' V of the change in the coefficients, r x r
    };
    [[nodiscard]] Systems systems(const std::vector<Complex>& coefficient, const std::vector<Complex>& change) const;
    void take(Eigen::Index k, const Matrix& term, const Matrix& rows, Eigen::Index loops);
    const Prepared& network_;
    ComplexMatrix basis_;  // V, n x r
    Reading reading_;      // of states V y
    Reading probing_;      // of G in place of V
    Matrix terms_;         // a column a term: real part of [V, G]^T T_k V; then as many for the imaginary part
    Matrix diagonal_;      // a column a term: mean size of its diagonal over loops, over the rest
};

}  // namespace network
