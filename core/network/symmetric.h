// SPDX-License-Identifier: GPL-3.0-or-later
// Complex symmetric systems: half the work of LU, and no pivots.
#pragma once

#include "network/circuit.h"

namespace network {

/// (A + jB) x, column by column: x has few.
[[nodiscard]] ComplexMatrix product(const Matrix& real, const Matrix& imaginary, const ComplexMatrix& x);

/// S = L D L^T of a complex symmetric (not Hermitian) matrix, L with a unit diagonal (standard; the square-root-free
/// form of Cholesky's method). Without pivots it is sound where the real part is positive definite and not drowned by
/// the imaginary part; `solve` therefore looks at the residual, and falls back on LU where it is above 1e-9 of the
/// right side.
class SymmetricFactors {
public:
    /// n x n, both symmetric.
    SymmetricFactors(Matrix real, Matrix imaginary);
    /// S x = b for the columns of b, n x m; corrected, twice at most, until what is left is below `exact` of b.
    [[nodiscard]] ComplexMatrix solve(const ComplexMatrix& rightSide, double exact = 1e-13) const;
    static constexpr double sound = 1e-9;  ///< what may be left, of the right side

private:
    void factor();
    void eliminate(Eigen::Index column, const Vector& weightReal, const Vector& weightImaginary);
    /// b - S x.
    [[nodiscard]] ComplexMatrix left(const ComplexMatrix& solution, const ComplexMatrix& rightSide) const;
    [[nodiscard]] ComplexMatrix substitute(const ComplexMatrix& rightSide) const;
    Matrix systemReal_, systemImaginary_;
    Matrix real_, imaginary_;                // of L below the diagonal
    Vector inverseReal_, inverseImaginary_;  // of D
};

}  // namespace network
