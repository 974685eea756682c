// SPDX-License-Identifier: GPL-3.0-or-later
// A unit's losses as fixed elements: core, eddy currents in wire, dielectrics.
#pragma once

#include <vector>

#include "exchange/relaxation_fit.h"
#include "network/circuit.h"

namespace exchange {

/// A closed loop under all winding branches: adds w^2 tau weight shape shape^T / (1 + jw tau) to their impedance.
struct EddyLoop {
    double weight = 0;      ///< H
    double tau = 0;         ///< s
    network::Vector shape;  ///< b
};

/// The unit with its functions of frequency replaced by sums of relaxations, from 10 Hz to 1 MHz:
///
///     Z = R + jw (leakage + n n^T core) + sum of eddy loops,   C = C' + dielectric C''
///
/// Core: relaxations of the turn inductance, all weights positive, so that it is a chain of L parallel R. Eddy currents
/// in round wire: the expansion of J2/J0 (proximity) and J0/J1 (skin) in their poles, -J2/J0 = sum 4/j0n^2 jw t/(1 + jw
/// t) with t = mu0 a^2/(rho j0n^2) and z J0/(2 J1) = 1 + sum jw t/(1 + jw t) with t = mu0 a^2/(rho j1n^2) (Watson,
/// Theory of Bessel Functions, from memory, checked numerically); what lies beyond the band is one more loop with the
/// same loss at low frequency. Skin effect takes its static inductance from the leakage, which holds it. Where wires
/// lie close, the loops of single wires would displace more flux than there is, far above the band; unless `exact`,
/// they are then one loop and some inductance that come nearest from 30 kHz to 1 MHz, so that the whole stays passive
/// at all frequencies. Dielectrics: a loss factor that does not change with frequency cannot go with a capacitance that
/// does not (Kramers and Kronig); the fit shares the deviation, above 20 kHz most exactly.
struct UnitLosses {
    RelaxationSum core;       ///< H per turn squared
    network::Matrix leakage;  ///< H, b x b: with `core.constant` n n^T; positive definite, with all loops shorted too
                              ///< unless `exact`
    std::vector<EddyLoop> loops;  ///< of every wire
    RelaxationSum dielectric;     ///< of C'': stands for -j; residual of 1
    double windingResidual = 0;   ///< largest relative deviation of the winding impedance matrix without the core
};
[[nodiscard]] UnitLosses unitLosses(const network::Circuit& unit, bool exact);

}  // namespace exchange
