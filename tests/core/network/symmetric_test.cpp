// SPDX-License-Identifier: GPL-3.0-or-later
// Factors of complex symmetric systems against Eigen's LU, and where they must give way to it.
#include "network/symmetric.h"

#include <gtest/gtest.h>

#include <random>

#include "network/dense.h"

namespace symmetric_test {

using network::Complex;
using network::ComplexMatrix;
using network::Matrix;

Matrix random(Eigen::Index n, unsigned seed) {
    std::mt19937 numbers(seed);
    std::uniform_real_distribution<double> even(-1, 1);
    return Matrix::NullaryExpr(n, n, [&] { return even(numbers); });
}

ComplexMatrix joined(const Matrix& real, const Matrix& imaginary) {
    ComplexMatrix whole(real.rows(), real.cols());
    whole.real() = real;
    whole.imag() = imaginary;
    return whole;
}

TEST(Symmetric, AgreesWithLuForAnySize) {
    for (const Eigen::Index n : {1, 2, 3, 5, 8, 21, 70}) {
        const Matrix a = random(n, 1), b = random(n, 2);
        const Matrix real = a * a.transpose() + 0.1 * Matrix::Identity(n, n), imaginary = b + b.transpose();
        const ComplexMatrix right = joined(random(n, 3).leftCols(std::min<Eigen::Index>(n, 3)),
                                           random(n, 4).leftCols(std::min<Eigen::Index>(n, 3)));
        const ComplexMatrix x = network::SymmetricFactors(real, imaginary).solve(right);
        const ComplexMatrix exact = network::DenseFactors(joined(real, imaginary)).solve(right);
        EXPECT_LT((x - exact).norm(), 1e-9 * exact.norm()) << n;
    }
}

TEST(Symmetric, ProductIsThatOfTheJoinedMatrix) {
    const Matrix a = random(6, 5), b = random(6, 6);
    const ComplexMatrix x = joined(random(6, 7).leftCols(2), random(6, 8).leftCols(2));
    EXPECT_LT((network::product(a, b, x) - joined(a, b) * x).norm(), 1e-13);
}

TEST(Symmetric, GivesWayToPivotsWhereAPivotVanishes) {
    // [[0, 1], [1, 0]] has no factors without pivots; a pivot of 1e-13 leaves no digits.
    for (const double pivot : {0.0, 1e-13}) {
        Matrix real(2, 2);
        real << pivot, 1, 1, 0;
        ComplexMatrix right(2, 1);
        right << 3.0, 4.0;
        const ComplexMatrix x = network::SymmetricFactors(real, Matrix::Zero(2, 2)).solve(right);
        EXPECT_LT(std::abs(x(0) - 4.0), 1e-9) << pivot;
        EXPECT_LT(std::abs(x(1) - 3.0), 1e-9) << pivot;
    }
}

}  // namespace symmetric_test
