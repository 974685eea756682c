// SPDX-License-Identifier: GPL-3.0-or-later
// Capacitance between bodies whose voltage varies linearly between nodes.
#pragma once

#include <vector>

#include "network/circuit.h"

namespace network {

/// A body's voltage along the axis: straight lines between (y, node). One point: the same everywhere. Points rise in y.
struct VoltageLine {
    std::vector<double> y;
    std::vector<int> node;
};

/// Adds the form of 1/2 integral C' (v_a - v_b)^2 dy, C' = total / (y1 - y0), to the node matrix; at y0 = y1 of
/// 1/2 total (v_a - v_b)^2 at that place.
void addFacing(ComplexMatrix& capacitance, const VoltageLine& a, const VoltageLine& b, double y0, double y1,
               Complex total);

/// Adds a plain capacitor between two nodes.
void addCapacitor(ComplexMatrix& capacitance, int from, int to, Complex value);

}  // namespace network
