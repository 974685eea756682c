// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/reading.h"

#include <numbers>

#include "magnetics/stack.h"

namespace network {

namespace {

constexpr Complex j{0, 1};

double angular(double frequency) {
    return 2 * std::numbers::pi * frequency;
}

const LumpedBranch& branchOf(const Circuit& circuit, int index) {
    return circuit.lumped[static_cast<std::size_t>(index)];
}

/// Reads the ports of one circuit at one frequency.
class PortReader {
public:
    PortReader(const Circuit& circuit, double frequency) : circuit_(circuit), frequency_(frequency) {}

    /// From the currents of all lumped branches and what the charges give at that port.
    Complex voltage(int port, int excited, const ComplexVector& lumped, Complex fromCharges) const {
        const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
        // EMFs and drops are summed apart: in common mode the EMFs cancel and must leave no rounding behind.
        const auto emf = [&](std::size_t t) { return port == excited ? p.emfShare[t] : 0.0; };
        const auto drop = [&](std::size_t t) {
            return impedance(branchOf(circuit_, p.through[t]), frequency_) * lumped(p.through[t]);
        };
        if (p.through.size() == 1) return emf(0) - drop(0);
        if (p.through.size() == 2) return (emf(0) - emf(1)) - (drop(0) - drop(1));
        return fromCharges / (j * angular(frequency_));
    }
    /// Into the unit.
    Complex impedanceInto(int port, const ComplexVector& lumped, Complex voltage) const {
        const auto& p = circuit_.ports[static_cast<std::size_t>(port)];
        Complex into = 1;
        if (p.through.size() == 1) into = lumped(p.through[0]);
        if (p.through.size() == 2) into = (lumped(p.through[0]) - lumped(p.through[1])) / 2.0;
        for (const int k : p.across) into -= voltage / impedance(branchOf(circuit_, k), frequency_);
        into -= voltage * (j * angular(frequency_) * p.acrossCapacitance);
        return voltage / into;
    }

private:
    const Circuit& circuit_;
    double frequency_;
};

}  // namespace

Reading Reading::in(const ComplexMatrix& vectors) const {
    return {lumped * vectors, turns * vectors, charges * vectors, injected};
}

ComplexMatrix drive(const Circuit& circuit, const Reading& reading, double frequency) {
    const auto ports = static_cast<Eigen::Index>(circuit.ports.size());
    ComplexMatrix drive = ComplexMatrix::Zero(reading.turns.cols(), ports);
    for (Eigen::Index p = 0; p < ports; ++p) {
        const auto& port = circuit.ports[static_cast<std::size_t>(p)];
        for (std::size_t t = 0; t < port.through.size(); ++t)
            drive.col(p) += port.emfShare[t] * reading.lumped.row(port.through[t]).transpose();
        if (port.through.empty()) drive.col(p) = reading.charges.row(p).transpose() / (j * angular(frequency));
    }
    return drive;
}

ComplexVector outputs(const Circuit& circuit, const Reading& reading, const ComplexMatrix& states, double frequency) {
    const PortReader read(circuit, frequency);
    const OutputLayout where{static_cast<int>(circuit.ports.size())};
    const Complex core = j * angular(frequency) * magnetics::turnInductance(circuit.core, frequency);
    const ComplexMatrix lumped = reading.lumped * states, turns = reading.turns * states,
                        charges = reading.charges * states;
    ComplexVector out(where.size());
    for (int e = 0; e < where.ports; ++e) {
        const auto& port = circuit.ports[static_cast<std::size_t>(e)];
        for (int p = 0; p < where.ports; ++p) {
            const Complex injected = port.through.empty() ? reading.injected(p, e) : Complex(0);
            out(where.voltage(e, p)) = read.voltage(p, e, lumped.col(e), injected - charges(p, e));
        }
        out(where.coreVoltage(e)) = core * turns(0, e);
        if (port.common) {  // both terminals move together: no impedance between them is meant
            out(where.impedance(e)) = out(where.totalImpedance(e)) = 0;
            continue;
        }
        out(where.impedance(e)) = read.impedanceInto(e, lumped.col(e), out(where.voltage(e, e)));
        // An injected ampere gives the impedance at once.
        const Complex own = port.through.empty() ? 1 : throughImpedance(circuit, e, frequency);
        out(where.totalImpedance(e)) = out(where.voltage(e, e)) * own;
    }
    return out;
}

}  // namespace network
