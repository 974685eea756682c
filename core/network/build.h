// SPDX-License-Identifier: GPL-3.0-or-later
// From coil, fields and core to the equations of one hook-up.
#pragma once

#include "coil/coil_build.h"
#include "field/capacitance.h"
#include "field/foil_eddies.h"
#include "field/leakage.h"
#include "field/winding_loss.h"
#include "network/circuit.h"

namespace network {

/// How many branches each layer is cut into, by index of `build.layers`.
using Pieces = std::vector<int>;

/// The build with each layer cut along the axis into its pieces, in the order of the turns: for the leakage matrix.
[[nodiscard]] coil::CoilBuild refined(const coil::CoilBuild& build, const Pieces& pieces);

/// Everything the circuit is made of, besides design and hook-up.
struct Fields {
    const coil::CoilBuild& build;
    const Pieces& pieces;
    const field::LeakageResult& leakage;  ///< of `refined(build, pieces)`
    const field::CapacitanceResult& capacitance;
    const field::ProximityForm* proximity;  ///< of `build`; null: left out
    const magnetics::CoreModel& core;
    const field::FoilEddies* foilEddies = nullptr;  ///< of `refined(build, pieces)`; null: left out
};

/// Capacitances enter as the energy of the voltage difference along the stretch where two bodies face each other,
/// voltages linear between the nodes of a layer: W = 1/2 integral C'(y) (v_a - v_b)^2 dy. For one branch a layer this
/// is the 4 x 4 form with C/3 and C/6; C/3, C/12 and (4/3N)(1 - 1/N) follow (check rows C-S*, C-L*; R. Lee, Electronic
/// Transformers and Circuits, from memory, re-derived). A unit with nothing earthed has 1 pF from core to earth (common
/// practice, no source).
[[nodiscard]] Circuit circuit(const design::Design& design, const design::HookUp& hookUp, const Fields& fields);

}  // namespace network
