// SPDX-License-Identifier: GPL-3.0-or-later
// How much flux the core takes.
#pragma once

#include "magnetics/monotone_curve.h"
#include "magnetics/stack.h"

namespace magnetics {

/// Rms voltage of a sine across N turns at peak flux density `flux`: V = (2 pi / sqrt 2) f N A B = 4.443 f N A B
/// (Faraday).
[[nodiscard]] double voltageAtFlux(double frequency, double turns, double area, double flux) noexcept;
/// Peak flux density at a sine of `volts` rms across N turns; inverse of `voltageAtFlux`.
[[nodiscard]] double fluxAtVoltage(double volts, double frequency, double turns, double area) noexcept;

/// Flux density on an alloy's curve at field H, T; odd in H. Through the curve's points as a monotone cubic: slopes by
/// F. N. Fritsch and J. Butland (SIAM J. Sci. Stat. Comput. 5, 1984) inside, mu0 mu_i at the origin and mu0 at the last
/// point, both limited to three secants (F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17, 1980; both from
/// memory); beyond the last point with slope mu0. Without a curve, J_s the saturation (shape of our own, no source):
///
///     B = mu0 H + (2/pi) J_s atan(pi mu0 (mu_i - 1) H / (2 J_s))
///
/// which starts with mu0 mu_i and ends at J_s + mu0 H. Saturation 0 (unknown): B = mu0 mu_i H. Anhysteretic: no loop.
[[nodiscard]] double fluxAtField(const StackBlock& block, double field) noexcept;
/// The same with its slope dB/dH.
[[nodiscard]] CurvePlace curveAtField(const StackBlock& block, double field) noexcept;

/// Flux density in one block's sheets, T, when N I / l = `appliedField`, A/m, drives path and joints in series
/// (Ampere):
///
///     H_k + (g / l) B_k(H_k) / mu0 = N I / l
///
/// Each block's sheets have their own joints, so blocks share the magnetomotive force and nothing else.
[[nodiscard]] double blockFlux(const CoreModel& core, const StackBlock& block, double appliedField) noexcept;
/// Mean flux density over the iron section, T: sum of share_k B_k at the same N I / l.
[[nodiscard]] double meanFlux(const CoreModel& core, double appliedField) noexcept;

/// Mean flux density of the stack, T peak, at which the criterion "saturation knee" is reached: the applied field N I /
/// l beyond its peak at which the stack's apparent permeability B_mean / (mu0 N I / l) has fallen to a fifth of its
/// greatest value, or any block reaches 95 % of its saturation, whichever is lower. A criterion of our own (no source).
/// `directField` is a steady N I / l in A/m, either sign: the working point shifts to its flux, and what remains from
/// there to the nearer knee is returned (0 if it lies beyond). Infinite if no block has a curve or a saturation.
[[nodiscard]] double kneeFlux(const CoreModel& core, double directField = 0) noexcept;

}  // namespace magnetics
