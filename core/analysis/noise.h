// SPDX-License-Identifier: GPL-3.0-or-later
// Thermal noise.
#pragma once

namespace analysis {

inline constexpr double boltzmann = 1.380649e-23;  ///< J/K, exact since 2019 (SI)

/// Noise voltage density of a resistance at `kelvin`, V/sqrt(Hz): e = sqrt(4 k T R) (Johnson, Nyquist 1928). Valid for
/// h f far below k T. For any passive network at one temperature R is the real part of the impedance between its
/// terminals.
[[nodiscard]] double thermalNoise(double resistance, double kelvin) noexcept;

/// Noise figure, dB, of a passive network at `kelvin` between a source of resistance `sourceOhm` and its observed
/// terminals: F = T Re(Z_out) / (T0 R_s |H|^2), Z_out with the source in place, H = V_out / EMF; T0 = 290 K (IEEE
/// standard reference temperature). The load's own noise counts, as in check row N-NF4.
[[nodiscard]] double passiveNoiseFigure(double outputResistance, double kelvin, double sourceOhm, double gain) noexcept;

}  // namespace analysis
