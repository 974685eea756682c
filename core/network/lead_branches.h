// SPDX-License-Identifier: GPL-3.0-or-later
// Lead-outs as branches between terminals and coils.
#pragma once

#include <string>

#include "coil/coil_build.h"
#include "network/extra_branches.h"
#include "network/nodes.h"

namespace network {

/// Name of the node at the coil's side of a winding's lead to `terminal`; the terminal itself where there is none.
[[nodiscard]] std::string coilSide(const coil::CoilBuild& build, const std::string& winding,
                                   const std::string& terminal);

/// One branch a lead, from its terminal inward: resistance at temperature factor `warm`, inductance of straight wire,
/// mutual inductance between the leads of one winding by their distance (pins: where they stand; flexible ones:
/// `coil::leadSpacing`) over the shorter's length. Leads of different windings are taken as uncoupled.
[[nodiscard]] ExtraBranches leadBranches(const coil::CoilBuild& build, Nodes& nodes, double warm, bool skinEffect);

}  // namespace network
