// SPDX-License-Identifier: GPL-3.0-or-later
// Direct-current resistance, length and mass of copper wire.
#pragma once

namespace coil {

/// IEC 60028:1925, annealed copper at 100 % IACS: 1.7241e-8 ohm m at 20 degrees Celsius, 0.00393 /K, 8890 kg/m3.
inline constexpr double copperResistivity20 = 1.7241e-8;
inline constexpr double copperTemperatureCoefficient = 0.00393;
inline constexpr double copperDensity = 8890;

/// Resistance of a conductor of cross-section `area`, m2 > 0, ohm:
///
///     R = rho20 (1 + alpha20 (T - 20)) l / A
///
/// l `length`, m, >= 0; T `temperature`, degree Celsius. Valid from -40 to 150 (range: common practice, no source).
[[nodiscard]] double conductorResistance(double length, double area, double temperature) noexcept;

/// The same for round wire of `bareDiameter`, m > 0.
[[nodiscard]] double wireResistance(double length, double bareDiameter, double temperature) noexcept;

/// Factor from 20 degrees to `temperature`.
[[nodiscard]] double resistanceFactor(double temperature) noexcept;

/// Mass of bare round copper wire, kg.
[[nodiscard]] double wireMass(double length, double bareDiameter) noexcept;

}  // namespace coil
