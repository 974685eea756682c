// SPDX-License-Identifier: GPL-3.0-or-later
// Metal of fittings that closes a loop round iron: a turn that is shorted.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

struct ClosedLoop {
    std::size_t fitting = 0;  ///< index into the design's fittings
    std::string words;        ///< "a clamp that closes a loop round the tongue"
    double share = 0;         ///< of the flux of a whole turn that goes through it
    double resistance = 0;    ///< of the loop, ohm
};

/// The loops that a design's fittings close, at direct current.
///
/// A fitting of strip that conducts, goes round iron and is not insulated: R = rho l / (b t), mean line
/// l = 2 (w + h) + 4 t; w width of that iron, h height of the stack, b width and t thickness of the strip, rho its
/// resistivity. A conducting bolt with a conducting frame or clamp, neither insulated: through the sheets by the bolt,
/// back by the frame round what iron lies outside the hole, R = rho_b h / (pi d^2 / 4) + rho_f (h + y) / (b t); y width
/// of the yoke, d the bolt's diameter. Source: resistance of a uniform conductor. Joints count as perfect: the least
/// that the loop can have, the worst case.
/// Shares of the flux: round the tongue 1; outer leg and yoke carry half of it in a shell core, all of it in a core of
/// two legs; a hole in the middle of a yoke's width leaves half of that outside (flux spread evenly: common practice,
/// no source).
[[nodiscard]] std::vector<ClosedLoop> closedLoops(const Design& design, const catalog::Catalog& shop);

/// What a loop puts across a winding of `turns`, ohm: R_p = N^2 R / k^2, k the loop's share of the flux.
/// Faraday's law: the loop's EMF is k V / N, what it takes k^2 V^2 / (N^2 R) = V^2 / R_p. Holds while the loop's own
/// stray reactance is small against R: up to some kHz for strip a tenth of a metre round.
[[nodiscard]] double loadOf(const ClosedLoop& loop, double turns) noexcept;

}  // namespace design
