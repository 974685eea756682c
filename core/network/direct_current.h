// SPDX-License-Identifier: GPL-3.0-or-later
// Direct current in a circuit.
#pragma once

#include "network/circuit.h"

namespace network {

/// A supply of `voltage` V behind `resistance` ohm (> 0) into a node.
struct DirectFeed {
    int node = earth;
    double voltage = 0;
    double resistance = 1;
};
/// A current that leaves a node for earth, A.
struct DirectDrain {
    int node = earth;
    double current = 0;
};
struct DirectSupply {
    std::vector<DirectFeed> feeds;
    std::vector<DirectDrain> drains;
    std::vector<int> earthed;   ///< nodes shorted to earth
    int withoutNetworkOf = -1;  ///< port whose own network carries no direct current; -1: none
};

/// Ampere-turns on the core that a supply drives, by nodal analysis of the circuit's resistances (Kirchhoff): windings
/// by their copper, networks of ports where no capacitor blocks; EMFs give no direct voltage. A table of impedance
/// counts with its lowest frequency. Resistances below a milliohm count as that; every node leaks 10 pS to earth, so
/// that floating parts have a voltage.
[[nodiscard]] double directAmpereTurns(const Circuit& circuit, const DirectSupply& supply);

}  // namespace network
