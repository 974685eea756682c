// SPDX-License-Identifier: GPL-3.0-or-later
// A design as a SPICE netlist: a subcircuit with pins as nodes, and an example circuit for a hook-up.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace exchange {

/// Netlist of the unit with its hook-ups' example circuits (`exampleCircuits`), for ngspice. An inside file: it holds
/// the design.
///
/// Every winding branch is a resistance, a leakage inductance coupled to all others and a turn source on one core node.
/// The core is a chain of L parallel R whose least inductance stands with the leakage, which is positive definite with
/// it. Eddy currents in wire are closed loops of R and L coupled to the branches, dielectric loss is R and C in series
/// beside the node matrix of capacitances (`UnitLosses`, exact loops). The file says how far these fits are from the
/// program's own solution in each hook-up. Made for small-signal analysis; where wires lie so close that loops of
/// single wires displace more flux than there is, transient analysis wants the netlist reduced to terminals. Throws
/// units::BadInput as `exampleCircuits` does.
[[nodiscard]] std::string netlist(const design::Design& design, const analysis::Answer& answer);

}  // namespace exchange
