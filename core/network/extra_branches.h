// SPDX-License-Identifier: GPL-3.0-or-later
// Branches without turns: lead-outs, and circuits closed in themselves that eddy currents flow in.
#pragma once

#include <vector>

#include "network/circuit.h"

namespace network {

/// Branches that link no main flux, appended to a circuit's winding branches.
struct ExtraBranches {
    std::vector<BranchEnds> ends;  ///< e; both ends at earth: closed in itself
    Vector resistance;             ///< ohm, e, > 0
    Vector bareDiameter;           ///< of round wire, m, e; 0: no skin effect
    Matrix inductance;             ///< H, e x e
    Matrix mutual;                 ///< H, winding branches x e; fewer rows or none: 0 there
};

/// Appends them: a closed one needs no node, the solver's loops hold it as it is. They belong to no winding
/// (`windingOf` -1, `sectionOf` empty).
void addBranches(Circuit& circuit, const ExtraBranches& extra);

/// Impedance of the other branches with the currents of all closed ones eliminated: Z_aa - Z_ac Z_cc^-1 Z_ca in place
/// of Z_aa, rows and columns of closed branches zero. Shape as `impedance`, b x b.
[[nodiscard]] ComplexMatrix withoutClosed(const Circuit& circuit, const ComplexMatrix& impedance);

}  // namespace network
