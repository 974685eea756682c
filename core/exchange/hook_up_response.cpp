// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/hook_up_response.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "network/nodes.h"
#include "units/characters.h"
#include "units/text.h"

namespace exchange {

using network::Complex;
using network::ComplexMatrix;

HookUpResponse::HookUpResponse(const design::Design& design, const design::HookUp& hookUp,
                               const network::Circuit& circuit, const std::vector<std::string>& pins)
    : circuit_(circuit), nodeOf_(circuit.nodes.size(), network::earth) {
    network::Nodes nodes(design, hookUp);
    std::vector<std::string> names;
    const auto indexOf = [&](const std::string& name) {
        const auto at = std::find(names.begin(), names.end(), name) - names.begin();
        if (at == static_cast<std::ptrdiff_t>(names.size())) names.push_back(name);
        return static_cast<int>(at);
    };
    for (const auto& pin : pins) {
        const int own = nodes.index(pin);
        nodeOfPin_.push_back(own == network::earth ? network::earth
                                                   : indexOf(nodes.names()[static_cast<std::size_t>(own)]));
    }
    for (std::size_t k = 0; k < circuit.nodes.size(); ++k) {
        const auto at = std::find(names.begin(), names.end(), circuit.nodes[k]);
        if (at != names.end()) nodeOf_[k] = static_cast<int>(at - names.begin());
    }
    count_ = static_cast<int>(names.size());
    driven_ = circuit.portOfRole(design::Role::Drive);
    observed_ = circuit.portOfRole(design::Role::Observe);
}

namespace {

/// Nodal equations Y v = I of a few nodes, earth left out.
struct Nodal {
    ComplexMatrix y;
    network::ComplexVector into;

    /// An admittance from node to node with an EMF that raises `to`.
    void add(int from, int to, Complex value, double emf) {
        for (const auto& [a, b] : {std::pair{from, to}, {to, from}}) {
            if (a < 0) continue;
            y(a, a) += value;
            if (b >= 0) y(a, b) -= value;
        }
        if (from >= 0) into(from) -= emf * value;
        if (to >= 0) into(to) += emf * value;
    }
};

}  // namespace

Complex HookUpResponse::at(double frequency, const ComplexMatrix& admittance) const {
    Nodal nodal{ComplexMatrix::Zero(count_, count_), network::ComplexVector::Zero(count_)};
    for (std::size_t i = 0; i < nodeOfPin_.size(); ++i)
        for (std::size_t k = 0; k < nodeOfPin_.size(); ++k)
            if (nodeOfPin_[i] >= 0 && nodeOfPin_[k] >= 0)
                nodal.y(nodeOfPin_[i], nodeOfPin_[k]) +=
                    admittance(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(k));
    const auto node = [&](int own) { return own < 0 ? network::earth : nodeOf_[static_cast<std::size_t>(own)]; };
    const auto branch = [&](int k, double emf) {
        constexpr double least = 1e-9;  // ohm, of a branch that is nothing
        const auto& lumped = circuit_.lumped[static_cast<std::size_t>(k)];
        nodal.add(node(lumped.ends.from), node(lumped.ends.to), 1.0 / (network::impedance(lumped, frequency) + least),
                  emf);
    };
    for (std::size_t p = 0; p < circuit_.ports.size(); ++p) {
        const auto& port = circuit_.ports[p];
        const bool driven = static_cast<int>(p) == driven_;
        for (std::size_t t = 0; t < port.through.size(); ++t) branch(port.through[t], driven ? port.emfShare[t] : 0);
        for (const int k : port.across) branch(k, 0);
        nodal.add(node(port.plus), node(port.minus),
                  Complex(0, 2 * std::numbers::pi * frequency * port.acrossCapacitance), 0);
    }
    const network::ComplexVector v = Eigen::PartialPivLU<ComplexMatrix>(nodal.y).solve(nodal.into);
    const auto& port = circuit_.ports[static_cast<std::size_t>(observed_)];
    const auto voltage = [&](int own) { return node(own) < 0 ? Complex(0) : v(node(own)); };
    return voltage(port.plus) - voltage(port.minus);
}

ReachedPins reachedPins(const design::Design& design, const network::Circuit& unit) {
    network::Nodes nodes(design, {});
    ReachedPins all;
    for (const auto& pin : terminalPins(design)) {
        const int own = nodes.index(pin.node);
        const auto at =
            own < 0 ? unit.nodes.end()
                    : std::find(unit.nodes.begin(), unit.nodes.end(), nodes.names()[static_cast<std::size_t>(own)]);
        if (at == unit.nodes.end()) continue;
        all.pins.push_back(pin);
        all.nodes.push_back(static_cast<int>(at - unit.nodes.begin()));
        all.names.push_back(pin.node);
    }
    return all;
}

void Deviation::take(Complex model, Complex wanted) {
    level = std::max(level, std::abs(20 * std::log10(std::abs(model / wanted))));
    angle = std::max(angle, std::abs(std::arg(model / wanted)) * 180 / std::numbers::pi);
}

SolvedHookUps::SolvedHookUps(const design::Design& design, const analysis::Answer& answer,
                             const std::vector<std::string>& pins) {
    for (const auto& hookUp : design.hookUps) {
        const auto at = answer.stages->solved.find(hookUp.name);
        if (at == answer.stages->solved.end()) continue;
        HookUpResponse response(design, at->second->hookUp, at->second->network.circuit(), pins);
        if (response.complete()) all_.push_back({at->second.get(), std::move(response)});
    }
}

std::vector<Complex> SolvedHookUps::voltages(const Admittance& admittance) const {
    std::vector<Complex> all;
    for (const double f : analysis::logarithmicGrid(10, 1e6, 76)) {
        const ComplexMatrix y = admittance(f);
        for (const auto& one : all_) all.push_back(one.response.at(f, y));
    }
    return all;
}

std::string SolvedHookUps::words(const Admittance& admittance) const {
    constexpr double audible = 100e3;  // what lies above is ruled by leads as much as by the unit
    std::vector<Deviation> below(all_.size()), whole(all_.size());
    for (const double f : analysis::logarithmicGrid(10, 1e6, 201)) {
        const ComplexMatrix y = admittance(f);
        for (std::size_t k = 0; k < all_.size(); ++k) {
            const auto& s = *all_[k].solved;
            const Complex model = all_[k].response.at(f, y);
            const Complex wanted = s.at(f, s.network.layout().voltage(s.driven(), s.observed()));
            whole[k].take(model, wanted);
            if (f <= audible) below[k].take(model, wanted);
        }
    }
    const auto said = [](const Deviation& off) {
        return units::significant(off.level, 2) + " dB and " + units::significant(off.angle, 2) + " degrees ";
    };
    std::string text;
    for (std::size_t k = 0; k < all_.size(); ++k)
        text += "* hook-up " + units::oneLine(all_[k].solved->hookUp.name) + ": within " + said(below[k]) +
                "of the full solution from 10 Hz to 100 kHz, " + said(whole[k]) + "to 1 MHz\n";
    return text;
}

}  // namespace exchange
