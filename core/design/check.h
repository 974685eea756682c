// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a design makes sense against a catalog.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"
#include "units/fault.h"

namespace design {

/// Every fault of a design that was read without one, each located as "FILE: /json/pointer". Empty: it can be built
/// and computed. Checked: every catalog key known; shares add up to 1; kinds agree (UI sheet with two legs); names
/// unique (windings, sections in a winding, terminals, shields, ports, hook-ups); terminals and nodes known; a pin
/// exists on the bobbin and is used once; a winding has at least one section, wire or foil but not both, and its two
/// ends differ; `order` lists exactly its sections; half turns only on a shell core; wire thinner than the window;
/// chamber and leg exist; overlapping straps; a port's ends differ; one drive and one observed port a hook-up;
/// promises and masks name figures' hook-ups and ports that exist; taps inside the winding.
/// More windings, terminals, … than any unit has are a fault that stands alone: the rest is then not looked at.
/// A coil that does not fit its window is not a fault: it is drawn and flagged.
[[nodiscard]] std::vector<units::Fault> check(const Design& design, const catalog::Catalog& shop,
                                              const std::string& file);

}  // namespace design
