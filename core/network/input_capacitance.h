// SPDX-License-Identifier: GPL-3.0-or-later
// What a port looks like at low frequency but for the core: a capacitance.
#pragma once

#include "network/circuit.h"

namespace network {

/// Capacitance at a port with a lossless, very large core and no load, F. Then every node's voltage follows from the
/// port's by turns alone; each set of nodes joined by windings is a rigid ladder of potentials, free to float as a
/// whole unless earthed (a balanced port holds its middle at earth). Twice the energy at one volt, least over the
/// floats. What hangs on the ports is not counted. Derived from energy; limit cases C/3 and C/12 are check rows C-S1,
/// C-S2.
[[nodiscard]] double inputCapacitance(const Circuit& circuit, int port);

}  // namespace network
