// SPDX-License-Identifier: GPL-3.0-or-later
// Direct current through a hook-up: by design, from a phantom supply, and what it leaves in the core.
#pragma once

#include "analysis/stages.h"
#include "network/direct_current.h"

namespace analysis {

/// Direct ampere-turns on the core of one hook-up. The phantom supply feeds through two resistors that differ by the
/// standard's allowance, R (1 +- m / 2), and the microphone takes half its current from each leg:
///
///     I_w = (R_2 - R_1) (I / 2) / (R_1 + R_2 + R_w)
///
/// through a winding of R_w between the legs; into a centre tap the resistors go in parallel, and what unequal halves
/// of the winding do with the current follows from their copper. One leg shorted to earth: the other's feed comes
/// through the winding, U / (R + R_w). The drive at the fed port is a microphone that lets no direct current through
/// besides; every other network does where no capacitor blocks it. Kirchhoff; supply and allowance by IEC 61938
/// (resistors read, allowance from memory).
struct DirectState {
    bool fed = false;     ///< this hook-up uses the port that has a phantom supply
    double byDesign = 0;  ///< A turns, of the conditions' direct currents
    double phantom = 0;   ///< greatest by mismatch, with the sign of `byDesign`
    double shorted = 0;   ///< with the leg shorted that drives more
    double turns = 0;     ///< between the legs of the fed port
    [[nodiscard]] double inService() const noexcept { return byDesign + phantom; }
};
/// A phantom supply into a fed port of a circuit; `swap`: the larger resistor in the other leg.
[[nodiscard]] network::DirectSupply phantomSupply(const design::PhantomFeed& phantom, const Solved& solved, int port,
                                                  bool swap);
[[nodiscard]] DirectState directState(const design::Design& design, const Solved& solved);

/// Direct field in service, A/m of N I / l.
[[nodiscard]] double directFieldOf(const design::Design& design, const Solved& solved, const Answer::Stages& stages);
/// What the core went through before: nothing, or one leg of the phantom supply shorted.
[[nodiscard]] magnetics::CoreLoop::Memory pastOf(const design::Design& design, const Solved& solved,
                                                 const Answer::Stages& stages);

}  // namespace analysis
