// SPDX-License-Identifier: GPL-3.0-or-later
// Thermal noise, an amplifier's noise on top of it, and what is made of both.
#pragma once

#include <complex>
#include <functional>

namespace analysis {

inline constexpr double boltzmann = 1.380649e-23;        ///< J/K, exact since 2019 (SI)
inline constexpr double referenceTemperature = 290;      ///< K: T0 of noise figures (IEEE definition, from memory)
inline constexpr double noiseFrom = 20, noiseTo = 20e3;  ///< Hz, band of the totals

/// Noise voltage density of a resistance at `kelvin`, V/sqrt(Hz): e = sqrt(4 k T R) (Johnson, Nyquist 1928). Valid for
/// h f far below k T. For any passive network at one temperature R is the real part of the impedance between its
/// terminals.
[[nodiscard]] double thermalNoise(double resistance, double kelvin) noexcept;

/// Noise of an amplifier referred to its input, the two taken as uncorrelated and white.
struct Amplifier {
    double voltage = 0;  ///< e_n, V/sqrt(Hz)
    double current = 0;  ///< i_n, A/sqrt(Hz)
};

/// Noise density between terminals of impedance `impedance` at `kelvin` with an amplifier there, V/sqrt(Hz):
/// e^2 = 4 k T Re Z + e_n^2 + i_n^2 |Z|^2 (Motchenbacher, Connelly, Low-Noise Electronic System Design, 1993, from
/// memory). A negative real part is rounding and counts as none.
[[nodiscard]] double outputNoise(std::complex<double> impedance, double kelvin, const Amplifier& amplifier) noexcept;

/// Noise figure, dB, of what stands between a source of resistance `sourceOhm` and terminals where the noise density
/// is `density`, V/sqrt(Hz), everything at `kelvin`:
///
///     F = 1 + (density^2 - 4 k T R_s |H|^2) / (4 k T0 R_s |H|^2)
///
/// H  `gain`, output voltage over EMF;  T0 = 290 K: the source alone is taken at the reference temperature (IEEE
/// definition, from memory). The load's own noise counts, as in check row N-NF4.
[[nodiscard]] double noiseFigure(double density, double kelvin, double sourceOhm, double gain) noexcept;

/// Source resistance for which an amplifier has the least noise figure, e_n / i_n, ohm (Motchenbacher, Connelly 1993,
/// from memory; derivative of F = 1 + (e_n^2 + i_n^2 R^2)/(4 k T0 R)). Needs both above 0.
[[nodiscard]] double bestSource(const Amplifier& amplifier) noexcept;

/// Amplitude of the A-weighting, 1 at 1 kHz: IEC 61672-1 (formula and table read second-hand),
///
///     R = 12194^2 f^4 / ((f^2 + 20.6^2) (f^2 + 12194^2) sqrt((f^2 + 107.7^2) (f^2 + 737.9^2))), over R(1000 Hz)
[[nodiscard]] double aWeighting(double frequency) noexcept;

/// Root of the integral of density^2 weight^2 df from `noiseFrom` to `noiseTo`, V: trapezoid over ln f, 40 steps a
/// decade.
[[nodiscard]] double bandNoise(const std::function<double(double)>& density,
                               const std::function<double(double)>& weight);

}  // namespace analysis
