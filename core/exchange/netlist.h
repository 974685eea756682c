// SPDX-License-Identifier: GPL-3.0-or-later
// A design as a SPICE netlist: a subcircuit with pins as nodes, and an example circuit for a hook-up.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace exchange {

/// Netlist of the unit with the example circuit of the answer's hook-up, for ngspice. An inside file: it holds the
/// design.
///
/// Every winding branch is a resistance, a leakage inductance coupled to all others (gauge shifted by c n n^T so that
/// the matrix is positive definite; the core gives c back) and a turn source on one core node. The core is the ladder
/// of the continued fraction tanh(t)/t = 1/(1 + t^2/(3 + t^2/(5 + ...))) (standard, Lambert), one a block, with its gap
/// in parallel. Capacitances are the node matrix. Left out, and said so in the file: alternating-current resistance of
/// the wire and dielectric loss. The example writes response.txt (Hz, dB re source EMF) by wrdata and ends in `quit 0`.
/// Throws units::BadInput if a port has an impedance table (no such element in SPICE).
[[nodiscard]] std::string netlist(const design::Design& design, const analysis::Answer& answer);

}  // namespace exchange
