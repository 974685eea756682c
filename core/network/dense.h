// SPDX-License-Identifier: GPL-3.0-or-later
// Dense complex factorisations: their templates are compiled in one file.
#pragma once

#include <memory>

#include "network/circuit.h"

namespace network {

/// LU with partial pivots of an n x n matrix.
class DenseFactors {
public:
    explicit DenseFactors(const ComplexMatrix& matrix);
    ~DenseFactors();
    DenseFactors(const DenseFactors&) = delete;
    DenseFactors& operator=(const DenseFactors&) = delete;
    [[nodiscard]] ComplexMatrix solve(const ComplexMatrix& rightSide) const;

private:
    struct Lu;
    std::unique_ptr<Lu> lu_;
};

/// Impedance of several paths with mutual impedance joined in parallel, 1 / (1^T Z^-1 1), ohm.
[[nodiscard]] Complex parallelImpedance(const ComplexMatrix& paths);

}  // namespace network
