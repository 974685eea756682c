// SPDX-License-Identifier: GPL-3.0-or-later
// Resistance against frequency: skin effect in round wire and proximity loss from the field of all layers.
#pragma once

#include <Eigen/Core>
#include <complex>
#include <vector>

#include "coil/coil_build.h"

namespace field {

/// delta = sqrt(rho / (pi f mu0)), m; f > 0 Hz, rho ohm m.
[[nodiscard]] double skinDepth(double frequency, double resistivity);

/// Impedance of an isolated round wire over its DC resistance, (k a/2) J0(k a)/J1(k a), k = (1 - j)/delta (Kelvin), a
/// the radius. Real part: Rac/Rdc. Imaginary part: the whole internal reactance; at low frequency (d/delta)^2/16, the
/// static internal inductance mu0/8pi, which `leakageMatrix` holds already. Relative error below 1e-10 for any ratio >=
/// 0.
[[nodiscard]] std::complex<double> roundWireImpedanceFactor(double diameterOverSkinDepth);

/// Dowell's factor for m layers at Delta (P. L. Dowell, Proc. IEE 113 (1966) 1387-1394; form seen in a reference page):
/// F = Re{z coth z} + (m^2 - 1)/3 Re{2 z tanh(z/2)}, z = (1 + j) Delta. A check: flat conductors over the whole height.
[[nodiscard]] double dowellFactor(double delta, int layers);

/// What proximity loss needs, made once per coil build: per layer a real n x n form P_k such that the loss of layer k
/// in a transverse field is g_k(f) i^H P_k i, so that  R(f) = diag(R_k s_k(f)) + sum_k g_k(f) P_k  and the same with
/// the eddy reactance as imaginary part; g_k is `wireLength[k]` times `transverseFieldFactor`. All layers of one wire
/// share that factor, so their forms are kept as one sum.
struct ProximityForm {
    std::vector<Eigen::MatrixXd> field;  ///< of each layer: at some of its wires, A/m per A, each row by the root of
                                         ///< its share in the mean; samples x n, no samples of foil
    std::vector<double> wireLength;      ///< m, of each layer with all its strands
    struct OfWire {
        double bareDiameter = 0;  ///< m
        Eigen::MatrixXd form;     ///< sum of wireLength P over its layers, (A/m)^2 m per A^2, n x n
    };
    std::vector<OfWire> ofWires;
    /// P of a layer, mean square of the local field, (A/m)^2 per A^2: n x n, PSD.
    [[nodiscard]] Eigen::MatrixXd ofLayer(std::size_t layer) const;
};

/// Mean square field of all layers (turns and senses included) over each layer's wires: at most eight points along its
/// midline (in a random-wound body: along five lines), both components. The field is that of even current density, so a
/// wire's own field is left out of it. Ends::Walled: the window's field round the whole turn. Ends::Beyond: that within
/// the window, beyond it the field before an iron plane (each leg alone), by the length of turn in each.
/// Foil has a zero form: its eddy currents are not those of round wire.
[[nodiscard]] ProximityForm proximityForm(const coil::CoilBuild& build, design::Ends ends);

/// Power of one metre of round wire in a transverse uniform alternating field of 1 A/m rms: loss in W and reactive
/// power in var (negative: the eddy currents displace flux), ohm-equivalent in `ProximityForm`:
///
///     g = 2 pi a^2 j w mu0 J2(k a)/J0(k a),  k = (1 - j)/delta, a = d/2
///
/// A long cylinder in a transverse field (classical, derived here again); at low frequency pi a^4 (w mu0)^2 / (4 rho).
[[nodiscard]] std::complex<double> transverseFieldFactor(double frequency, double bareDiameter, double resistivity);

}  // namespace field
