// SPDX-License-Identifier: GPL-3.0-or-later
// A unit's subcircuit in its hook-ups, as text for ngspice.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"
#include "exchange/terminal_pins.h"

namespace exchange {

/// An example circuit around `x1 ... unit` for the answer's hook-up, and those of all other hook-ups as comments. The
/// example writes response.txt (Hz, dB re source EMF) by wrdata with one scale and ends in `quit 0`. Throws
/// units::BadInput if a port of the answer's hook-up has an impedance table (no such element in SPICE).
[[nodiscard]] std::string exampleCircuits(const design::Design& design, const analysis::Answer& answer,
                                          const std::vector<Pin>& pins);

}  // namespace exchange
