// SPDX-License-Identifier: GPL-3.0-or-later
// One edit against a circuit solver on the netlist of the same design.
#pragma once

namespace benchmarks {

/// Prints for every subject: an edit (a turn more or less; one hook-up, figures and traces at 600 frequencies, median
/// of seven), ngspice's whole process on the exported netlist at 601 frequencies, nothing subtracted, and the ratio.
/// Both run one after the other on the machine as it is. Returns false if ngspice fails.
[[nodiscard]] bool sideBySide();

}  // namespace benchmarks
