// SPDX-License-Identifier: GPL-3.0-or-later
// How ports drive a network's state, and what is read from it.
#pragma once

#include "network/circuit.h"

namespace network {

/// Where each output stands in a sample of values. Excitation j: a unit EMF in port j (V), or, at a port without
/// `through`, a unit current into it (A).
struct OutputLayout {
    int ports = 0;
    [[nodiscard]] int voltage(int excited, int at) const noexcept { return excited * (ports + 3) + at; }
    /// Core voltage per turn, V.
    [[nodiscard]] int coreVoltage(int excited) const noexcept { return excited * (ports + 3) + ports; }
    /// Impedance into the unit at a port, all else connected, ohm.
    [[nodiscard]] int impedance(int port) const noexcept { return port * (ports + 3) + ports + 1; }
    /// Impedance between a port's terminals with its own network in place, ohm: what makes the noise there.
    [[nodiscard]] int totalImpedance(int port) const noexcept { return port * (ports + 3) + ports + 2; }
    [[nodiscard]] int size() const noexcept { return ports * (ports + 3); }
};

/// The rows that link a state of n numbers (whatever basis its currents are written in) to the ports.
struct Reading {
    ComplexMatrix lumped;    ///< currents of the lumped branches, l x n
    ComplexMatrix turns;     ///< ampere-turns on the core, 1 x n
    ComplexMatrix charges;   ///< port rows of C^-1 A, P x n: the ports' voltage is minus this times the state over jw
    ComplexMatrix injected;  ///< port rows of C^-1 J for a unit current into each port, P x P: no part of the state

    /// The same for states V y.
    [[nodiscard]] Reading in(const ComplexMatrix& vectors) const;
};

/// Right sides of S x = d for each excitation, n x P.
[[nodiscard]] ComplexMatrix drive(const Circuit& circuit, const Reading& reading, double frequency);

/// All outputs in the order of `OutputLayout` from the states under each excitation, n x P.
[[nodiscard]] ComplexVector outputs(const Circuit& circuit, const Reading& reading, const ComplexMatrix& states,
                                    double frequency);

}  // namespace network
