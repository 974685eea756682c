// SPDX-License-Identifier: GPL-3.0-or-later
// Eddy currents in foil: windings of foil and Faraday shields.
#pragma once

#include <Eigen/Core>

#include "coil/coil_build.h"
#include "design/choices.h"

namespace field {

/// Circuits closed in themselves, each with its resistance, that stand for the eddy currents of all foil. A winding's
/// branch i sees w^2 m_ik m_jk / (R_k + jw L_k) of each where loops do not couple.
struct FoilEddies {
    Eigen::MatrixXd leakage;     ///< H, n x n: `leakageMatrix` of the build in the gauge that the rest is in
    Eigen::VectorXd resistance;  ///< ohm at 20 degrees Celsius, e
    Eigen::MatrixXd inductance;  ///< H, e x e
    Eigen::MatrixXd mutual;      ///< H, n x e
};

/// Two kinds of eddy current, both carried to `highest` Hz. Ends of a foil that are folded over a section are left out.
///
/// Along the axis: a radial field drives currents round the core in a foil that redistribute over its width and screen
/// that field. Every foil is cut into strips, graded to its edges; with their inductances from `leakageMatrix` and
/// their resistances the redistributions that carry no net current are resolved into independent circuits (generalised
/// eigenvalues), of which those that count are kept. A shield's overlap is insulated: no net current at all.
///
/// Through the thickness t: the axial field drives a current forth on one face and back on the other. Dowell (Proc. IEE
/// 113 (1966) 1387-1394; exact for flat conductors) in the field of the arrangement, strip by strip:
///
///     R [ 1/2 xi coth(xi/2) ] + R (b h)^2 [ 2 xi tanh(xi/2) ],  xi = (1 + j) t/delta,
///
/// h the mean axial field per ampere, b the strip's width. Less what the static field holds already (xi^2/12, xi^2)
/// both are sums of circuits of time constant t0/((2k-1) pi)^2 and t0/(2k pi)^2, t0 = mu0 sigma t^2; as many terms as t
/// asks for. Against finite elements, foils between and beside windings: within 1 % of the complex inductance from 100
/// Hz to 1 MHz (tests/references/foil_eddies.json).
[[nodiscard]] FoilEddies foilEddies(const coil::CoilBuild& build, design::Ends ends, double highest);

}  // namespace field
