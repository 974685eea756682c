// SPDX-License-Identifier: GPL-3.0-or-later
// What of a design stays as it is while the rest is sought anew.
#pragma once

#include "design/design.h"

namespace seek {

/// `from` null: nothing is held, the brief alone counts.
struct Held {
    design::DesignPtr from;
    bool core = false;        ///< sheet, stack, alloys, gap, bobbin
    bool turns = false;       ///< of every winding
    bool wires = false;       ///< wire and strands of every winding
    bool order = false;       ///< sections in their order, shields and barriers where they lie
    bool insulation = false;  ///< thickness of every barrier and interlayer; only with the order
};

}  // namespace seek
