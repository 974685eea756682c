// SPDX-License-Identifier: GPL-3.0-or-later
// What an outside file may say of a unit: its title and its pins.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace exchange {

/// Part number and revision behind `comment`, a line each; never the design's name, which may tell the arrangement.
[[nodiscard]] std::string outsideTitle(const design::Design& design, const std::string& comment);

/// One node of the unit that is reached from outside.
struct Pin {
    std::string node;     ///< as in the design
    std::string outside;  ///< for SPICE and strangers: "t_3", "t_ribbon_p", "core", "screen_1"
    std::string words;    ///< "pin 3", "lead ribbon +, red", "core"
};
/// Terminals in the design's order, then shields without a terminal that some hook-up names, then the core.
[[nodiscard]] std::vector<Pin> terminalPins(const design::Design& design);

}  // namespace exchange
