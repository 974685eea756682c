// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/legs.h"

#include "network/dense.h"

namespace network {

namespace {

const CircuitPort& portOf(const Circuit& c, int index) {
    return c.ports[static_cast<std::size_t>(index)];
}

CircuitPort toEarth(const std::string& name, int node) {
    CircuitPort port;
    port.name = name;
    port.plus = node;
    return port;
}

bool bothMove(const CircuitPort& port) {
    return port.plus != earth && port.minus != earth;
}

/// Transfers and currents under EMFs in a differential drive.
ComplexVector differentialEmf(Eigen::Index legs) {
    ComplexVector emf(legs);
    if (legs == 1)
        emf << 1;
    else
        emf << 0.5, -0.5;
    return emf;
}

}  // namespace

Circuit withLegPorts(Circuit circuit, int driven, int observed) {
    const CircuitPort own = portOf(circuit, driven), seen = portOf(circuit, observed);
    if (own.through.size() == 2) {
        CircuitPort common = own;
        common.name = own.name + " common";
        common.common = true;
        common.emfShare = {1, 1};
        circuit.ports.push_back(std::move(common));
    }
    for (std::size_t k = 0; k < own.through.size(); ++k) {
        CircuitPort leg = toEarth(own.name + " leg", k == 0 ? own.plus : own.minus);
        if (own.through.size() == 1) leg.minus = own.minus;
        leg.through = {own.through[k]};
        leg.emfShare = {1};
        circuit.ports.push_back(std::move(leg));
    }
    if (bothMove(seen)) {
        circuit.ports.push_back(toEarth(seen.name + " plus", seen.plus));
        circuit.ports.push_back(toEarth(seen.name + " minus", seen.minus));
    }
    return circuit;
}

Legs legs(const Circuit& circuit, const ComplexVector& outputs, int driven, int observed, double frequency) {
    const OutputLayout where{static_cast<int>(circuit.ports.size())};
    const auto& through = portOf(circuit, driven).through;
    const auto count = static_cast<int>(through.size());
    const int terminals = bothMove(portOf(circuit, observed)) ? 2 : 0;
    const int first = where.ports - terminals - count;
    Legs read;
    read.transfer.resize(count);
    read.admittance.resize(count, count);
    read.output = outputs(where.totalImpedance(observed));
    const auto own = [&](int k) {
        return impedance(circuit.lumped[static_cast<std::size_t>(through[static_cast<std::size_t>(k)])], frequency);
    };
    for (int k = 0; k < count; ++k) {
        read.transfer(k) = outputs(where.voltage(first + k, observed));
        for (int i = 0; i < count; ++i) {
            const double emf = i == k ? 1 : 0;
            read.admittance(i, k) = (emf - outputs(where.voltage(first + k, first + i))) / own(i);
        }
    }
    const ComplexVector emf = differentialEmf(count);
    read.differential = read.transfer.cwiseProduct(emf).sum();
    if (terminals > 0) {
        read.outputTerminals = ComplexVector::Zero(2);
        for (int t = 0; t < 2; ++t)
            for (int k = 0; k < count; ++k)
                read.outputTerminals(t) += emf(k) * outputs(where.voltage(first + k, first + count + t));
    }
    if (count < 2) return read;
    const int both = first - 1;
    read.common = outputs(where.voltage(both, observed));
    read.commonCurrent.resize(2);
    for (int k = 0; k < 2; ++k) read.commonCurrent(k) = -outputs(where.voltage(both, first + k)) / own(k);
    return read;
}

Legs withAdded(const Legs& legs, const ComplexVector& added) {
    const Eigen::Index count = legs.transfer.size();
    const ComplexMatrix series = added.asDiagonal();
    const ComplexMatrix one = ComplexMatrix::Identity(count, count);
    const DenseFactors outer(one + legs.admittance * series);
    Legs changed;
    changed.admittance = outer.solve(legs.admittance);
    const ComplexVector lost = series * legs.transfer;  // what a unit of leg current takes off the output
    changed.transfer = legs.transfer - changed.admittance.transpose() * lost;
    changed.output = legs.output + lost.cwiseProduct(ComplexVector(outer.solve(legs.transfer))).sum();
    changed.differential = changed.transfer.cwiseProduct(differentialEmf(count)).sum();
    if (legs.commonCurrent.size() == 0) return changed;
    changed.commonCurrent = outer.solve(legs.commonCurrent);
    changed.common = legs.common - lost.cwiseProduct(changed.commonCurrent).sum();
    return changed;
}

}  // namespace network
