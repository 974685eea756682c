// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/terminated.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "measured/port_law.h"
#include "network/circuit.h"
#include "units/fault.h"

namespace measured {

namespace {

using design::Earthing;
using design::Role;

/// A port of the hook-up: the data's ports it lies on, and its network at one frequency.
struct Place {
    const design::PortUse* use = nullptr;
    int plus = 0, minus = -1;  ///< minus -1: one port of the data, from terminal to terminal
};

std::vector<Place> placesOf(const design::HookUp& hookUp) {
    std::vector<Place> places;
    int next = 0;
    for (const auto& use : hookUp.ports) {
        const bool two = use.earthing == Earthing::Balanced;
        places.push_back({&use, next, two ? next + 1 : -1});
        next += two ? 2 : 1;
    }
    return places;
}

int portsOf(const std::vector<Place>& places) {
    return places.empty() ? 0 : std::max(places.back().plus, places.back().minus) + 1;
}

network::LumpedBranch branchOf(const design::PortUse& use, double share) {
    network::LumpedBranch branch;
    branch.table = use.table;
    if (use.through) branch.element = *use.through;
    branch.share = share;
    return branch;
}

bool isOpen(const design::PortUse& use) {
    return !use.through && use.table.empty();
}

Complex acrossAdmittance(const design::PortUse& use, double frequency) {
    Complex y = 0;
    for (const auto& across : use.across) {
        network::LumpedBranch branch;
        branch.element = across;
        y += 1.0 / network::impedance(branch, frequency);
    }
    return y;
}

/// The equations of one frequency: unknown are the voltages and then the currents at all ports of the data.
class Equations {
public:
    Equations(const NetworkData& data, std::size_t at, const std::vector<Place>& places)
        : ports_(data.ports), left_(ComplexMatrix::Zero(unknowns(), unknowns())) {
        const PortLaw law = portLaw(data, at);
        left_.topLeftCorner(ports_, ports_) = law.ofVoltage;
        left_.topRightCorner(ports_, ports_) = law.ofCurrent;
        for (const Place& place : places) add(place, data.frequencies[at]);
        solver_.compute(left_);
    }
    /// Voltages and currents with one volt, or in an open port one ampere, in the port's own network.
    [[nodiscard]] Eigen::VectorXcd driven(const Place& place) const {
        Eigen::VectorXcd right = Eigen::VectorXcd::Zero(unknowns());
        const bool two = place.minus >= 0, common = two && place.use->mode == design::Mode::Common;
        const double legs = two && !common && !isOpen(*place.use) ? 0.5 : 1;
        right(ports_ + place.plus) = legs;
        if (two) right(ports_ + place.minus) = common ? legs : -legs;
        return solver_.solve(right);
    }
    [[nodiscard]] static Complex voltage(const Eigen::VectorXcd& solved, const Place& place) {
        return solved(place.plus) - (place.minus >= 0 ? solved(place.minus) : Complex(0));
    }
    /// Into the unit; of a balanced port that which goes in at plus and comes out at minus.
    [[nodiscard]] Complex current(const Eigen::VectorXcd& solved, const Place& place) const {
        const Complex plus = solved(ports_ + place.plus);
        return place.minus >= 0 ? (plus - solved(ports_ + place.minus)) / 2.0 : plus;
    }

private:
    [[nodiscard]] Eigen::Index unknowns() const { return Eigen::Index{2} * ports_; }
    /// Of a leg: v + Zt (i + Ya (v - other)) = EMF, open: i + Ya (v - other) = injected.
    void addLeg(int leg, int other, Complex through, bool open, Complex across) {
        const int row = ports_ + leg;
        const Complex weight = open ? Complex(1) : through;
        left_(row, leg) += (open ? 0.0 : 1.0) + weight * across;
        left_(row, ports_ + leg) += weight;
        if (other >= 0) left_(row, other) -= weight * across;
    }
    void add(const Place& place, double frequency) {
        const bool two = place.minus >= 0, open = isOpen(*place.use);
        const Complex across = acrossAdmittance(*place.use, frequency);
        const Complex through = open ? Complex(0) : network::impedance(branchOf(*place.use, two ? 0.5 : 1), frequency);
        addLeg(place.plus, place.minus, through, open, across);
        if (two) addLeg(place.minus, place.plus, through, open, across);
    }

    int ports_;
    ComplexMatrix left_;
    Eigen::FullPivLU<ComplexMatrix> solver_;
};

const Place* ofRole(const std::vector<Place>& places, Role role) {
    for (const Place& place : places)
        if (place.use->role == role) return &place;
    return nullptr;
}

const Place* named(const std::vector<Place>& places, const std::string& name, const std::string& file) {
    if (name.empty()) return ofRole(places, Role::Drive);
    std::string all;
    for (const Place& place : places) {
        if (place.use->port == name) return &place;
        all += (all.empty() ? "" : ", ") + place.use->port;
    }
    units::refuse(file, "asked for port \"" + name + "\"", "one of " + all);
}

double degrees(Complex value) {
    return std::arg(value) * 180 / std::numbers::pi;
}

}  // namespace

TerminatedUnit terminated(const NetworkData& data, const design::HookUp& hookUp, const std::string& impedanceAt,
                          const std::string& file) {
    const std::vector<Place> places = placesOf(hookUp);
    if (portsOf(places) != data.ports)
        units::refuse(
            file, std::to_string(data.ports) + (data.ports == 1 ? " port" : " ports"),
            std::to_string(portsOf(places)) + " ports, those of hook-up " + hookUp.name + ", balanced ones twice");
    const Place *driven = ofRole(places, Role::Drive), *observed = ofRole(places, Role::Observe),
                *asked = named(places, impedanceAt, file);
    const auto first = std::find_if(data.frequencies.begin(), data.frequencies.end(), [](double f) { return f > 0; });
    const std::vector<double> frequencies(first, data.frequencies.end());
    std::vector<MeasuredCurve> response{{CurveKind::Response, "response", frequencies, {}},
                                        {CurveKind::Phase, "phase", frequencies, {}}};
    std::vector<MeasuredCurve> impedance{{CurveKind::Impedance, "impedance", frequencies, {}},
                                         {CurveKind::ImpedanceAngle, "impedance angle", frequencies, {}}};
    for (auto k = static_cast<std::size_t>(first - data.frequencies.begin()); k < data.frequencies.size(); ++k) {
        const Equations equations(data, k, places);
        if (driven != nullptr && observed != nullptr) {
            const Complex out = Equations::voltage(equations.driven(*driven), *observed);
            response[0].value.push_back(20 * std::log10(std::abs(out)));
            response[1].value.push_back(degrees(out));
        }
        if (asked != nullptr && asked->use->mode != design::Mode::Common) {  // of it no impedance is meant
            const Eigen::VectorXcd solved = equations.driven(*asked);
            const Complex z = Equations::voltage(solved, *asked) / equations.current(solved, *asked);
            impedance[0].value.push_back(std::abs(z));
            impedance[1].value.push_back(degrees(z));
        }
    }
    TerminatedUnit unit;
    for (auto* pair : {&response, &impedance})
        for (MeasuredCurve& curve : *pair)
            if (!curve.value.empty()) unit.curves.push_back(std::move(curve));
    return unit;
}

}  // namespace measured
