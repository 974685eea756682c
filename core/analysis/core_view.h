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
    /// Solves each frequency that is asked for.
    explicit CoreView(const network::Circuit& circuit);
    /// Carried between frequencies solved from `from` to `to` Hz; beyond, solved anew.
    CoreView(const network::Circuit& circuit, double from, double to, const std::stop_token& stop = {});

    struct Seen {
        network::Complex impedance;             ///< between the ends of the turn, all in place, ohm
        std::vector<network::Complex> atPorts;  ///< voltage at each port of the hook-up for an ampere in the turn, ohm
    };
    [[nodiscard]] Seen at(double frequency) const;
    /// Solved at this frequency, never carried.
    [[nodiscard]] Seen solvedAt(double frequency) const;

private:
    [[nodiscard]] Seen seen(const network::ComplexVector& outputs) const;
    network::Prepared network_;
    network::Sweep sweep_;
    double from_ = 0, to_ = 0;
};

/// The circuit with one turn of search coil on its core and a port of it, last of all.
[[nodiscard]] network::Circuit withSearchCoil(network::Circuit circuit);

}  // namespace analysis
