// SPDX-License-Identifier: GPL-3.0-or-later
// The second flux of a shell core: what half turns drive through one outer leg and back through the other.
#pragma once

#include "network/extra_branches.h"

namespace network {

/// Half turns pass one window only. With Phi the flux of the tongue and psi the difference of the outer legs' fluxes, a
/// winding of n turns of which one half passes the first window alone links n Phi + d psi, d = +1/2 (the second: -1/2),
/// since it goes round one outer leg, whose flux is (Phi +- psi)/2. The legs' loop has its own reluctance, psi per d i
/// ampere-turns `turnInductance(outerLoop)`: rank two (elementary magnetic circuit, derived here).
///
/// Inductance d d^T Lambda and, as circuits closed in themselves, the sheets' eddy currents:
///
///     1/Lambda(w) = 1/Lambda_g + (theta coth theta)/Lambda_0,  theta coth theta = 1 + sum_k 2 jwt / (jwt + k^2 pi^2)
///
/// t = theta^2/jw: each term is a loop round the flux of resistance k^2 pi^2 Lambda_0/(2 t) with Lambda_0/2 of its own;
/// terms beyond the eighth are drawn together by rising groups (within 0.5 % of the closed form to 1 MHz).
struct SecondFlux {
    Matrix inductance;  ///< H, winding branches squared: to be added to the leakage
    ExtraBranches loops;
};
/// `oneSided`: d of each winding branch.
[[nodiscard]] SecondFlux secondFlux(const magnetics::CoreModel& outerLoop, const Vector& oneSided);

}  // namespace network
