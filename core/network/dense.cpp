// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/dense.h"

#include <Eigen/LU>
#include <Eigen/QR>
#include <algorithm>

namespace network {

struct DenseFactors::Lu {
    Eigen::PartialPivLU<ComplexMatrix> factors;
};

DenseFactors::DenseFactors(const ComplexMatrix& matrix)
    : lu_(std::make_unique<Lu>(Eigen::PartialPivLU<ComplexMatrix>(matrix))) {}
DenseFactors::~DenseFactors() = default;

ComplexMatrix DenseFactors::solve(const ComplexMatrix& rightSide) const {
    return lu_->factors.solve(rightSide);
}

ComplexMatrix directionsOf(const ComplexMatrix& vectors, double threshold) {
    Eigen::ColPivHouseholderQR<ComplexMatrix> split(vectors.rows(), vectors.cols());
    split.setThreshold(threshold);
    split.compute(vectors);
    return split.householderQ() * ComplexMatrix::Identity(vectors.rows(), std::max<Eigen::Index>(1, split.rank()));
}

Complex parallelImpedance(const ComplexMatrix& paths) {
    return 1.0 / DenseFactors(paths).solve(ComplexMatrix::Ones(paths.rows(), 1)).sum();
}

}  // namespace network
