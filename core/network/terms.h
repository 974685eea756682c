// SPDX-License-Identifier: GPL-3.0-or-later
// The network's matrix as a sum of fixed matrices times functions of frequency.
#pragma once

#include <Eigen/SparseCore>
#include <vector>

#include "network/circuit.h"

namespace network {

/// One part c(f) T of the system S(f) = sum c_k(f) T_k in branch currents, T real and symmetric.
struct Term {
    enum class Kind {
        Resistance,      ///< c = 1, T in ohm
        Inductance,      ///< c = jw, T in H
        Elastance,       ///< c = 1/(jw), T in 1/F
        ElastanceLoss,   ///< c = 1/w: dielectric loss
        Core,            ///< c = jw Lambda(f)
        Skin,            ///< c = the wire's impedance over its direct-current resistance, less the static part
        Eddy,            ///< c = loss and reactance of a metre of wire in a transverse field
        ImpedanceTable,  ///< c = a port's table
    };
    Kind kind = Kind::Resistance;
    double bareDiameter = 0;  ///< m, of Skin and Eddy
    int lumped = -1;          ///< of ImpedanceTable
    Matrix matrix;
};
using Terms = std::vector<Term>;

/// All terms of a circuit for currents i = basis x (branches x n), `elastance` being A^T C^-1 A in that basis. Lumped
/// R, L and C join the terms of their kind.
[[nodiscard]] Terms termsOf(const Circuit& circuit, const Eigen::SparseMatrix<double>& basis,
                            const ComplexMatrix& elastance);

/// c_k at f > 0 Hz, in the order of the terms.
[[nodiscard]] std::vector<Complex> coefficients(const Terms& terms, const Circuit& circuit, double frequency);

}  // namespace network
