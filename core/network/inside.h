// SPDX-License-Identifier: GPL-3.0-or-later
// What stands inside the network at one frequency: for drawings, where the ports do not tell enough.
#pragma once

#include "network/solve.h"

namespace network {

/// Currents and potentials for the excitation of one port.
struct Inside {
    ComplexVector current;    ///< of every branch, windings first, A, from `from` to `to`
    ComplexVector potential;  ///< of every node to earth, V
    Complex intoUnit;         ///< out of the excited port's network into its plus terminal, A
    [[nodiscard]] Complex potentialOf(int node) const { return node == earth ? Complex(0) : potential(node); }
};

/// Branches and nodes in one system, Z i - A^T v = e and A i + jwC v = J, A the node-branch incidence: another way to
/// the same voltages as `Prepared::solve`, which eliminates the nodes. Excitation as there: a unit EMF in the port, or
/// a unit current into one without a network. With `shorted` not negative, that port's terminals are joined by nothing.
/// Meant for the audio band: at the lowest frequencies the capacitive rows drown in rounding.
[[nodiscard]] Inside inside(const Prepared& network, double frequency, int excited, int shorted = -1);

}  // namespace network
