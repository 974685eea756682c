// SPDX-License-Identifier: GPL-3.0-or-later
// Nodes joined by windings, and the turns between them.
#pragma once

#include <vector>

#include "network/circuit.h"

namespace network {

/// Each set of nodes joined by winding branches is an island with a turns count above its first node. Island 0 is
/// earth's.
struct Ladders {
    std::vector<int> island;  ///< per node
    Vector turns;             ///< per node
    int count = 0;
};
[[nodiscard]] Ladders ladders(const Circuit& circuit);

/// Turns from a port's minus to its plus terminal; 0 if no winding joins them.
[[nodiscard]] double portTurns(const Circuit& circuit, const Ladders& ladders, int port);

}  // namespace network
