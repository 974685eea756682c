// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/dense.h"

#include <Eigen/LU>

namespace network {

struct DenseFactors::Lu {
    explicit Lu(const ComplexMatrix& matrix) : factors(matrix) {}
    Eigen::PartialPivLU<ComplexMatrix> factors;
};

DenseFactors::DenseFactors(const ComplexMatrix& matrix) : lu_(std::make_unique<Lu>(matrix)) {}
DenseFactors::~DenseFactors() = default;

ComplexMatrix DenseFactors::solve(const ComplexMatrix& rightSide) const {
    return lu_->factors.solve(rightSide);
}

Complex parallelImpedance(const ComplexMatrix& paths) {
    return 1.0 / DenseFactors(paths).solve(ComplexMatrix::Ones(paths.rows(), 1)).sum();
}

}  // namespace network
