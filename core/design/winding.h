// SPDX-License-Identifier: GPL-3.0-or-later
// What the customer connects to: terminals and windings.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"
#include "catalog/wire.h"
#include "design/choices.h"
#include "units/quantity.h"

namespace design {

/// A point that can be reached from outside: a pin of the bobbin or a flexible lead.
struct Terminal {
    std::string name;
    int pin = 0;  ///< bobbin pin number; 0: a lead
    std::string leadColour;
    units::Quantity leadLength = 0;  ///< m
    json::Value extra;
    bool operator==(const Terminal&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Terminal& t) {
    visit.need("name", t.name);
    visit.may("pin", t.pin, json::within(0, 999));
    visit.may("lead_colour", t.leadColour);
    visit.may("lead_length", t.leadLength, json::within(0, 10).in("m"));
}

/// A foil conductor as wide as its section: one turn a layer.
struct FoilConductor {
    units::Quantity thickness = 50e-6;  ///< m
    units::Quantity width = 0;          ///< m; 0: the section's width
    json::Value extra = nullptr;
    bool operator==(const FoilConductor&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, FoilConductor& f) {
    visit.need("thickness", f.thickness, json::aboveUpTo(0, 0.002).in("m"));
    visit.may("width", f.width, json::within(0, 0.5).in("m"));
}

/// A tap: a terminal `turns` from the winding's start.
struct Tap {
    units::Quantity turns = 0;
    std::string terminal;
    json::Value extra = nullptr;
    bool operator==(const Tap&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Tap& t) {
    visit.need("turns", t.turns, json::aboveUpTo(0, 50000));
    visit.need("terminal", t.terminal);
}

/// A winding: one conductor from `start` to `finish`, wound in one or more sections.
struct Winding {
    std::string name;
    catalog::PartRef<catalog::Wire> wire;  ///< empty for foil
    std::optional<FoilConductor> foil;
    int strands = 1;  ///< wires in hand, side by side and in parallel
    Connection connection = Connection::Series;
    std::string start;  ///< terminal
    std::string finish;
    std::vector<Tap> taps;
    std::vector<std::string> order;        ///< section names from start to finish; empty: in coil order
    units::Quantity resistanceFactor = 1;  ///< stretched wire; 1: none
    json::Value extra;
    bool operator==(const Winding&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Winding& w) {
    visit.need("name", w.name);
    visit.may("wire", w.wire);
    visit.may("foil", w.foil);
    visit.may("strands", w.strands, json::within(1, 100));
    visit.may("connection", w.connection);
    visit.need("start", w.start);
    visit.need("finish", w.finish);
    visit.may("taps", w.taps);
    visit.may("order", w.order);
    visit.may("resistance_factor", w.resistanceFactor, json::within(0.8, 1.5));
}

}  // namespace design
