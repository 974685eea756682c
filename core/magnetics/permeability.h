// SPDX-License-Identifier: GPL-3.0-or-later
// What a sheet does to a small alternating flux.
#pragma once

#include <complex>

namespace magnetics {

inline constexpr double mu0 = 1.25663706143591729539e-6;  ///< 4 pi 1e-7 H/m (the 2019 value differs by 5.5e-10)

/// Skin depth, m:  delta = sqrt(rho / (pi f mu0 mu)).  f > 0 Hz, `permeability` relative, `resistivity` ohm m.
[[nodiscard]] double skinDepth(double frequency, double permeability, double resistivity) noexcept;

/// Complex relative permeability of a sheet seen from outside, mu' - j mu'':
///
///     mu(f) = mu_i tanh(theta)/theta,   theta = (1 + j) d / (2 delta)
///
/// d `thickness`, m; delta from mu_i. One-dimensional linear eddy current; R. M. Bozorth, Ferromagnetism (1951), ch.
/// 17; J. Lammeraner and M. Stafl, Eddy Currents (1966) (both from memory), verified against the classical loss pi^2
/// B^2 f^2 d^2 / (6 rho). Valid for B far below the knee, d far below the sheet's width, insulated sheets; measured
/// nickel-iron lies lower above the corner d = 2 delta (eddy anomaly).
[[nodiscard]] std::complex<double> sheetPermeability(double frequency, double initialPermeability, double resistivity,
                                                     double thickness) noexcept;

/// Frequency where d = 2 delta, Hz: f = 4 rho / (pi mu0 mu_i d^2).
[[nodiscard]] double eddyCorner(double initialPermeability, double resistivity, double thickness) noexcept;

/// Classical eddy loss per volume for sinusoidal peak flux density, W/m3: pi^2 B^2 f^2 d^2 / (6 rho). Valid for d <
/// delta.
[[nodiscard]] double classicalEddyLoss(double peakFlux, double frequency, double thickness,
                                       double resistivity) noexcept;

}  // namespace magnetics
