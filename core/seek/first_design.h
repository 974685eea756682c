// SPDX-License-Identifier: GPL-3.0-or-later
// A design to begin with: sensible first choices by closed forms, before anything is computed or sought.
#pragma once

#include "design/enquiry.h"
#include "seek/need.h"

namespace seek {

/// Brief, terminals, ports, one hook-up, and windings with shields in between whose turns stand for their ratio alone:
/// without core, bobbin and wires. Minus of every port is a winding's start, which lies inside, next to its shield.
[[nodiscard]] design::Design sketchOf(const design::Enquiry& enquiry);

/// Draws up what is asked in the simplest order, on the cheapest core whose window holds at least twice the turns that
/// low end and level ask for (else on that with the most room), with a quarter more turns than they ask for, or as many
/// as it takes to make up for its copper, and as much copper as fits. Nothing says that it keeps every promise: figures
/// tell, `sought` finds better. Throws units::BadInput as `needOf` does, and where closed forms leave no core.
[[nodiscard]] design::DesignPtr firstDesign(const Need& need, const catalog::Catalog& shop);

}  // namespace seek
