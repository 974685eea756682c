// SPDX-License-Identifier: GPL-3.0-or-later
// Capacitances between layers, shields and core of a coil build.
#pragma once

#include <complex>
#include <string>
#include <vector>

#include "coil/coil_build.h"

namespace field {

/// What a capacitance ends on.
struct Body {
    enum class Kind { Layer, Foil, Core } kind = Kind::Core;
    int index = 0;  ///< into build.layers or build.foils
    auto operator<=>(const Body&) const = default;
};

/// Two bodies facing each other over a stretch of the axis, with evenly spread capacitance. Voltages along a layer run
/// linearly from its first to its last turn. y0 = y1: all of it at that one position (ends of layers to a yoke or to
/// the next chamber), a body that does not reach it taken at its nearer end.
struct Facing {
    Body a, b;
    double y0 = 0, y1 = 0;       ///< stretch over which they face, m
    std::complex<double> total;  ///< F, over the whole stretch; imaginary part <= 0 (loss)
    bool operator==(const Facing&) const = default;
};

/// Relative spread of a wild winding's capacitances. Of how rows lie: wires on wires at their mean distance and wires
/// in the hollows differ by 41 to 46 % from the mean of both, which is taken. Of which turns touch: their mean square
/// difference in turns, 4/3 (1 - 1/n) of a stroke's in n strokes to and fro, is 4 to 39 % more in simulated windings
/// and scatters by 4 to 10 % (tests/references/wild_winding.json).
inline constexpr double wildSpread = 0.5;

struct CapacitanceResult {
    std::vector<Facing> facings;
    std::vector<std::complex<double>> turnToTurn;  ///< per layer: between neighbouring turns of the layer, F (one gap)
    double spread = 0;                             ///< by chance, relative
    bool valid = true;
    std::string why;
    bool operator==(const CapacitanceResult&) const = default;
};

/// All facings of a coil build with the sheets, walls and fill between them: layer to layer, layer to foil, to core
/// through the bobbin wall, outermost to the outer leg (window part of the turn only: 2 x stack; on two legs to the
/// other leg's coil over 1 x stack), ends to yokes (same part) and to the next chamber's; uncovered parts look through
/// to the next object. Sections wound in one hand share their place and face each other turn by turn. `lossy` false:
/// all loss factors taken as zero. Left out: fringes beyond the window and from layer to layer at ends.
[[nodiscard]] CapacitanceResult capacitances(const coil::CoilBuild& build, bool lossy);

}  // namespace field
