// SPDX-License-Identifier: GPL-3.0-or-later
// How much level the core takes.
#pragma once

#include "analysis/stages.h"

namespace analysis {

/// Level at which a criterion is reached, at the point that the brief names.
struct MaximumLevel {
    double dbu = 0;  ///< infinite: no limit known
    const char* limit = "core saturation";
};

/// Maximum level of a hook-up at f: the sine at which the core's peak flux density reaches the stack's saturation knee.
/// The core's own voltage is used, so source and winding resistance have had their share: V_turn = (2 pi/sqrt 2) f A B
/// (Faraday), referred to the source EMF, the driven or the observed terminals by the network. Direct currents shift
/// the working point. Computed with the small-signal network: optimistic by the inductance lost near the knee.
[[nodiscard]] MaximumLevel maximumLevel(const design::Design& design, const Solved& solved,
                                        const Answer::Stages& stages, double kneeFlux, double frequency);

/// Flux density of the knee for this design with its direct currents, T.
[[nodiscard]] double designKneeFlux(const design::Design& design, const Answer::Stages& stages);

}  // namespace analysis
