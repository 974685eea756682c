// SPDX-License-Identifier: GPL-3.0-or-later
// How much flux the core takes.
#pragma once

#include "magnetics/stack.h"

namespace magnetics {

/// Rms voltage of a sine across N turns at peak flux density `flux`: V = (2 pi / sqrt 2) f N A B = 4.443 f N A B (Faraday).
[[nodiscard]] double voltageAtFlux(double frequency, double turns, double area, double flux) noexcept;
/// Peak flux density at a sine of `volts` rms across N turns; inverse of `voltageAtFlux`.
[[nodiscard]] double fluxAtVoltage(double volts, double frequency, double turns, double area) noexcept;

/// Flux density on an alloy's curve at field H, T: monotone cubic (Fritsch-Carlson) through the points in sqrt-free
/// coordinates, beyond the last point with slope mu0; without a curve: arctan shape through mu_i and saturation.
[[nodiscard]] double fluxAtField(const StackBlock& block, double field) noexcept;

/// Mean flux density of the stack, T peak, at which the criterion "saturation knee" is reached: the field at which the
/// stack's apparent permeability (mean B over mu0 H with the gap) has fallen to a fifth of its greatest value, or any
/// block reaches 95 % of its saturation, whichever is lower. A criterion of our own (no source). `directField` is a
/// steady field in A/m added to the alternating one.
[[nodiscard]] double kneeFlux(const CoreModel& core, double directField = 0) noexcept;

}  // namespace magnetics
