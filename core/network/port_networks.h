// SPDX-License-Identifier: GPL-3.0-or-later
// What hangs on the ports, as branches.
#pragma once

#include "network/circuit.h"
#include "network/nodes.h"

namespace network {

/// Adds every port of the hook-up with its `through` and `across` branches. A plain capacitor across is kept as a
/// capacitance.
void addPorts(Circuit& circuit, Nodes& nodes, const design::Design& design, const design::HookUp& hookUp);

/// Admittance that a port's network lays across its terminals, S: what is across them, and the load itself; a drive's
/// own resistance is left out.
[[nodiscard]] Complex portAdmittance(const Circuit& circuit, int port, double frequency);

}  // namespace network
