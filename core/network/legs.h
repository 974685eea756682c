// SPDX-License-Identifier: GPL-3.0-or-later
// A source seen leg by leg: both legs driven alike, and with other impedance in them.
#pragma once

#include "network/reading.h"

namespace network {

/// The circuit with more ways to excite it, none of which adds an element: after its own ports, in a balanced driven
/// port (two legs) one that drives both legs alike; then one port for each leg, to earth; then, where both terminals of
/// the observed port move, one from each to earth.
[[nodiscard]] Circuit withLegPorts(Circuit circuit, int driven, int observed);

/// How the legs of a driven port stand to the observed terminals at one frequency. EMFs and currents count from the
/// source outward; k = 1 or 2 legs.
struct Legs {
    ComplexVector transfer;         ///< voltage at the observed terminals per volt in each leg, k
    ComplexMatrix admittance;       ///< current in leg i per volt in leg j, S, k x k
    Complex output;                 ///< impedance between the observed terminals with all in place, ohm
    Complex differential;           ///< voltage observed per volt between the legs
    Complex common = 0;             ///< per volt in both legs alike; solved for itself, so nothing cancels
    ComplexVector commonCurrent;    ///< current in each leg per volt in both, S; empty with one leg
    ComplexVector outputTerminals;  ///< voltages of the observed terminals to earth per volt between the legs, or empty
};
/// Reads them from the outputs of `withLegPorts`, whose legs must have impedance.
[[nodiscard]] Legs legs(const Circuit& circuit, const ComplexVector& outputs, int driven, int observed,
                        double frequency);

/// The same with impedance `added` in series with each leg (may be negative), ohm, k: exact, by elimination of the leg
/// currents I = Y (E - Z I) - T J (Woodbury's identity; the network is reciprocal). `outputTerminals` are dropped.
[[nodiscard]] Legs withAdded(const Legs& legs, const ComplexVector& added);

}  // namespace network
