// SPDX-License-Identifier: GPL-3.0-or-later
// What a hook-up's observed port shows when only the unit's behaviour at its pins is known.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "analysis/stages.h"
#include "exchange/terminal_pins.h"

namespace exchange {

/// A hook-up's own networks between the pins of a unit.
class HookUpResponse {
public:
    /// `pins`: nodes of the design; `circuit`: of the hook-up. Both must live as long as this.
    HookUpResponse(const design::Design& design, const design::HookUp& hookUp, const network::Circuit& circuit,
                   const std::vector<std::string>& pins);
    /// Voltage at the observed port per volt of the driven port's EMF, from the pins' admittance matrix at f, S. Needs
    /// `complete()`.
    [[nodiscard]] network::Complex at(double frequency, const network::ComplexMatrix& admittance) const;
    /// True if there is a driven and an observed port.
    [[nodiscard]] bool complete() const { return driven_ >= 0 && observed_ >= 0; }

private:
    const network::Circuit& circuit_;
    std::vector<int> nodeOfPin_;  ///< index among `count_` nodes, or earth
    std::vector<int> nodeOf_;     ///< by node of the circuit
    int count_ = 0;
    int driven_ = -1, observed_ = -1;
};

/// Pins that are nodes of the unit, with their indices there; a terminal that nothing is wound to is left out.
struct ReachedPins {
    std::vector<Pin> pins;
    std::vector<int> nodes;
    std::vector<std::string> names;  ///< of the pins' nodes in the design
};
[[nodiscard]] ReachedPins reachedPins(const design::Design& design, const network::Circuit& unit);

/// Greatest difference between two solutions.
struct Deviation {
    double level = 0, angle = 0;  ///< dB, degrees
    void take(network::Complex model, network::Complex wanted);
};

/// All solved hook-ups with a driven and an observed port.
class SolvedHookUps {
public:
    using Admittance = std::function<network::ComplexMatrix(double frequency)>;  ///< of the pins, S
    /// Both must live as long as this.
    SolvedHookUps(const design::Design& design, const analysis::Answer& answer, const std::vector<std::string>& pins);
    /// Voltage at the observed port of every hook-up at 15 frequencies a decade from 10 Hz to 1 MHz.
    [[nodiscard]] std::vector<network::Complex> voltages(const Admittance& admittance) const;
    /// How far they are from the program's own solution at 40 frequencies a decade: a comment for each hook-up.
    [[nodiscard]] std::string words(const Admittance& admittance) const;

private:
    struct One {
        const analysis::Solved* solved;
        HookUpResponse response;
    };
    std::vector<One> all_;
};

}  // namespace exchange
