// SPDX-License-Identifier: GPL-3.0-or-later
// How a unit is connected: ports, what hangs on them, straps and earths.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/choices.h"
#include "json/record.h"
#include "units/quantity.h"

namespace design {

/// A pair of terminals where something is connected.
struct Port {
    std::string name;
    std::string plus;
    std::string minus;
    json::Value extra;
    bool operator==(const Port&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Port& p) {
    visit.need("name", p.name);
    visit.need("plus", p.plus);
    visit.need("minus", p.minus);
}

/// Resistance, inductance and capacitance in series; a capacitance of 0 means none is fitted (a short).
struct Branch {
    units::Quantity resistance = 0;
    units::Quantity inductance = 0;
    units::Quantity capacitance = 0;
    json::Value extra = nullptr;
    bool operator==(const Branch&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Branch& b) {
    visit.may("resistance", b.resistance, json::within(0, 1e12).in("ohm"));
    visit.may("inductance", b.inductance, json::within(0, 1e6).in("H"));
    visit.may("capacitance", b.capacitance, json::within(0, 1).in("F"));
}

/// One point of a measured impedance, in files [Hz, ohm real, ohm imaginary].
struct ImpedancePoint {
    double frequency = 0;
    double real = 0;
    double imaginary = 0;
    bool operator==(const ImpedancePoint&) const = default;
    void readSelf(const json::Value& from, const std::string& key, json::Reader& reader) {
        std::vector<double> three;
        if (from.is_array()) reader.value(from, key, three, json::within(-1e15, 1e15));
        if (three.size() != 3 || three[0] <= 0)
            return reader.fault(key, &from, "[frequency above 0 Hz, real ohm, imaginary ohm]");
        frequency = three[0];
        real = three[1];
        imaginary = three[2];
    }
    [[nodiscard]] json::Value writeSelf() const { return json::Value::array({frequency, real, imaginary}); }
};

/// What a hook-up hangs on one port. `through` is in series with the EMF of a drive, or is the load itself; with
/// neither `through` nor `table` the port is open. `across` branches lie from terminal to terminal.
struct PortUse {
    std::string port;
    Role role = Role::Load;
    Earthing earthing = Earthing::Floating;
    Mode mode = Mode::Differential;
    std::optional<Branch> through;
    std::vector<ImpedancePoint> table;  ///< instead of `through`; interpolated, ends held
    std::vector<Branch> across;
    units::Quantity amplifierVoltageNoise = 0;  ///< e_n of an amplifier at the observed port, V/sqrt(Hz)
    units::Quantity amplifierCurrentNoise = 0;  ///< i_n, A/sqrt(Hz)
    json::Value extra;
    bool operator==(const PortUse&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, PortUse& u) {
    visit.need("port", u.port);
    visit.need("role", u.role);
    visit.may("earthing", u.earthing);
    visit.may("mode", u.mode);
    visit.may("through", u.through);
    visit.may("table", u.table);
    visit.may("across", u.across);
    visit.may("amplifier_voltage_noise", u.amplifierVoltageNoise, json::within(0, 1e-3).in("V/rtHz"));
    visit.may("amplifier_current_noise", u.amplifierCurrentNoise, json::within(0, 1e-3).in("A/rtHz"));
}

/// One named way of connecting a unit. Nodes are terminals, shields by name, and "core"; "earth" is the reference.
struct HookUp {
    std::string name;
    std::vector<std::vector<std::string>> straps;  ///< each a list of nodes joined together
    std::vector<std::string> earths;               ///< nodes tied to earth
    std::vector<PortUse> ports;
    std::string note;
    json::Value extra;
    bool operator==(const HookUp&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, HookUp& h) {
    visit.need("name", h.name);
    visit.may("straps", h.straps);
    visit.may("earths", h.earths);
    visit.need("ports", h.ports);
    visit.may("note", h.note);
}

}  // namespace design
