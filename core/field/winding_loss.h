// SPDX-License-Identifier: GPL-3.0-or-later
// Resistance against frequency: skin effect in round wire and proximity loss from the field of all layers.
#pragma once

#include <Eigen/Core>
#include <complex>
#include <vector>

#include "coil/coil_build.h"

namespace field {

/// Rac/Rdc of an isolated round wire, Re[(k a/2) J0(k a)/J1(k a)], k = (1 - j)/delta (Kelvin); with its internal reactance
/// as imaginary part, j x/Rdc beyond the static internal inductance not subtracted. Accurate to 1e-6 for d/delta <= 30.
[[nodiscard]] std::complex<double> roundWireImpedanceFactor(double diameterOverSkinDepth);

/// Dowell's factor for m layers at Delta (P. L. Dowell, Proc. IEE 113 (1966) 1387-1394; form seen in a reference page):
/// F = Re{z coth z} + (m^2 - 1)/3 Re{2 z tanh(z/2)}, z = (1 + j) Delta.
[[nodiscard]] double dowellFactor(double delta, int layers);

/// What proximity loss needs, made once per coil build: per layer a real n x n form P_k such that the loss of layer k in a
/// transverse field is g_k(f) i^H P_k i, so that  R(f) = diag(R_k s_k(f)) + sum_k g_k(f) P_k  and the same with the eddy
/// reactance as imaginary part.
struct ProximityForm {
    std::vector<Eigen::MatrixXd> perLayer;   ///< mean square of the local field, (A/m)^2 per A^2: shape n x n each, PSD
    std::vector<double> wireLength;          ///< m, of each layer with all its strands
};
[[nodiscard]] ProximityForm proximityForm(const coil::CoilBuild& build, design::Ends ends);

/// Complex loss and reactance of `length` metres of round wire in a transverse uniform alternating field of 1 A/m rms,
/// ohm-equivalent (W per (A/m)^2 rms + j var): Bessel solution of a cylinder in a transverse field.
[[nodiscard]] std::complex<double> transverseFieldFactor(double frequency, double bareDiameter, double resistivity);

}  // namespace field
