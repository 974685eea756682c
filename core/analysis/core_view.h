// SPDX-License-Identifier: GPL-3.0-or-later
// The hook-up as its core sees it.
#pragma once

#include "network/solve.h"
#include "network/sweep.h"

namespace analysis {

/// Found with a search coil: one turn on the core without resistance, leakage or load, open at its ends. An ampere into
/// it stands for an ampere-turn that the linear core does not ask for: what the core's bends and loops add.
class CoreView {
public:
    /// Carried between frequencies solved from `from` to `to` Hz; beyond, solved anew.
    CoreView(const network::Circuit& circuit, double from, double to, const std::stop_token& stop = {});
    /// Between the ends of the turn, the linear core and everything else in place, ohm.
    [[nodiscard]] network::Complex impedance(double frequency) const;
    /// Voltage at a port of the hook-up for an ampere in the turn, ohm.
    [[nodiscard]] network::Complex atPort(double frequency, int port) const;

private:
    [[nodiscard]] network::Complex output(double frequency, int index) const;
    network::Prepared network_;
    network::Sweep sweep_;
    double from_, to_;
    int coil_;
};

/// The circuit with one turn of search coil on its core and a port of it, last of all.
[[nodiscard]] network::Circuit withSearchCoil(network::Circuit circuit);

}  // namespace analysis
