// SPDX-License-Identifier: GPL-3.0-or-later
// How finely each layer is cut, from an estimate of what a cut leaves out.
#pragma once

#include "network/build.h"
#include "network/solve.h"

namespace network {

/// Two pieces a layer, from which the estimate is made; one where foil, a single turn or more than 36 layers leave no
/// room for two.
[[nodiscard]] Pieces coarsePieces(const coil::CoilBuild& build);

/// What even currents within pieces leave out of the driven-to-observed response, per layer, as a share of the
/// response.
///
/// Along a piece the current falls by what its capacitances take; the network takes it as constant. The neglected part
/// is, in lowest order, a sawtooth whose flux energy acts on the response like an impedance jwL_d in series:
///     dV/V = w |Z|/|H| (|s_k, drive (L s_observe)_k| + |s_k, observe (L s_drive)_k|) / 2,
/// s the difference of a layer's two halves' currents under unit EMF at the driven and at the observed port, L the
/// leakage matrix of such differences, Z the observed port's own network (first-order perturbation of a reciprocal
/// network, derived here). It falls as 1/n^2 for n pieces. Taken at the top of the band in which the response is not
/// below half the power and not 6 dB above its value at 1 kHz (at least 20 kHz, at most 1 MHz), at a half and at a
/// quarter of it; the greatest counts. Zero without a driven and an observed port, and for layers that are not in two
/// pieces.
[[nodiscard]] Vector neglected(const Prepared& coarse, const Pieces& pieces);

/// Pieces a layer, in proportion to the cube root of each layer's share (least sum of shares for a given number), until
/// the shares of all together are below 0.03 dB; not fewer than about 40 branches in all, not more than 60 and 16 a
/// layer. `shares` are those of two pieces a layer; the greatest of several hook-ups.
[[nodiscard]] Pieces piecesFor(const coil::CoilBuild& build, const Vector& shares);

}  // namespace network
