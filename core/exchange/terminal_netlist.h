// SPDX-License-Identifier: GPL-3.0-or-later
// A design as a SPICE netlist for a customer: what it does at its terminals, and nothing of how it is wound.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace exchange {

/// Netlist of the unit reduced to its terminals (`TerminalModel`), with the hook-ups' example circuits, for ngspice. An
/// outside file: pins by terminal, neither windings, sections, shields, wire, core nor the design's name; the numbers
/// of inner nodes and branches follow from the accuracy wanted, and are never the number of layers or sections.
///
/// Inner nodes stand as capacitor and resistor to earth, branches as a node each whose voltage is the branch's current
/// (capacitor for its inductance, resistor for its resistance), coupled by pairs of voltage-controlled current sources
/// (gyrators, lossless). Stable in transient analysis. The deviation from the program's own solution is said in the
/// file for each hook-up. Throws units::BadInput as `exampleCircuits` does.
[[nodiscard]] std::string terminalNetlist(const design::Design& design, const analysis::Answer& answer);

}  // namespace exchange
