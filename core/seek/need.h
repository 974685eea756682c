// SPDX-License-Identifier: GPL-3.0-or-later
// What is asked of a unit, without a word of how it is built.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace seek {

/// A winding as the customer connects to it.
struct WindingNeed {
    design::Winding winding;  ///< name, ends, taps (their turns as shares of the whole); no wire
    double ratio = 1;         ///< turns over those of the winding with the fewest
    int side = 0;             ///< windings joined by straps are one side; 0: the driven side
};

/// A shield that the hook-ups count on.
struct ShieldNeed {
    std::string name, terminal;
    units::Quantity thickness = 25e-6, leadInductance = 0;
};

/// Everything that is asked: the brief with its promises, what hangs on each port, how many turns the windings have
/// against each other, which shields come out where. Nothing of core, bobbin, wires, turns or order.
struct Need {
    design::Design frame;  ///< without core, bobbin, windings and coil
    std::vector<WindingNeed> windings;
    std::vector<ShieldNeed> shields;
    int sides = 1;
    std::size_t fewest = 0;  ///< index of the winding with the fewest turns
};

/// What a design is asked to do. Throws units::BadInput for what cannot be sought: a section that comes out at a
/// terminal of its own, sections in parallel, an open-winding or box shield, no promise to keep.
[[nodiscard]] Need needOf(const design::Design& design, const std::string& file);

/// Turns between the ends of a port in a hook-up, in turns of the winding with the fewest; 0 where no chain of
/// windings and straps joins them.
[[nodiscard]] double portRatio(const Need& need, const design::HookUp& hookUp, const std::string& port);

}  // namespace seek
