// SPDX-License-Identifier: GPL-3.0-or-later
// What is wound, from the core outward: sections, barriers, shields.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "catalog/insulation.h"
#include "catalog/parts.h"
#include "catalog/wire.h"
#include "design/choices.h"
#include "units/quantity.h"

namespace design {

/// Insulation of a certain thickness.
struct Ply {
    catalog::PartRef<catalog::Insulation> insulation;
    units::Quantity thickness = 0;  ///< m
    json::Value extra = nullptr;
    bool operator==(const Ply&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Ply& p) {
    visit.need("insulation", p.insulation);
    visit.need("thickness", p.thickness, json::within(0, 0.02).in("m"));
}

/// One uninterrupted piece of a winding, at one place in the coil.
struct Section {
    std::string winding;
    std::string name;           ///< "a", "b": unique within its winding
    units::Quantity turns = 1;  ///< halves allowed on a shell core
    Lay lay = Lay::Layers;
    int turnsPerLayer = 0;          ///< 0: as many as fit
    units::Quantity marginLow = 0;  ///< kept free at the chamber's low end, m
    units::Quantity marginHigh = 0;
    End starts = End::Low;
    Traverse traverse = Traverse::BackAndForth;
    bool reversed = false;  ///< wound in the opposite sense
    LastLayer lastLayer = LastLayer::Close;
    std::optional<Ply> interlayer;    ///< between the layers of this section
    units::Quantity layerFactor = 1;  ///< radial room of a layer in overall diameters (random: of an ideal layer)
    units::Quantity pitchFactor = 1;  ///< least pitch in overall diameters
    std::string hand;                 ///< sections next to each other with the same hand are wound together
    std::string start;                ///< terminal of this section's own start; "" by the winding's order
    std::string finish;
    json::Value extra;
    bool operator==(const Section&) const = default;
    [[nodiscard]] std::string label() const { return winding + "." + name; }
};
template <class Visitor>
void fields(Visitor& visit, Section& s) {
    visit.need("winding", s.winding);
    visit.need("name", s.name);
    visit.need("turns", s.turns, json::within(0.5, 20000));
    visit.may("lay", s.lay);
    visit.may("turns_per_layer", s.turnsPerLayer, json::within(0, 20000));
    visit.may("margin_low", s.marginLow, json::within(0, 0.5).in("m"));
    visit.may("margin_high", s.marginHigh, json::within(0, 0.5).in("m"));
    visit.may("starts", s.starts);
    visit.may("traverse", s.traverse);
    visit.may("reversed", s.reversed);
    visit.may("last_layer", s.lastLayer);
    visit.may("interlayer", s.interlayer);
    visit.may("layer_factor", s.layerFactor, json::within(0.5, 2));
    visit.may("pitch_factor", s.pitchFactor, json::within(1, 20));
    visit.may("hand", s.hand);
    visit.may("start", s.start);
    visit.may("finish", s.finish);
}

/// Insulation between sections.
struct Barrier {
    Ply ply;
    json::Value extra;
    bool operator==(const Barrier&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Barrier& b) {
    fields(visit, b.ply);
}

/// A Faraday shield. Folded over the ends of what lies between it and the shield further in (or the bobbin), and on one
/// terminal with that, it is a box. It carries no current round the turn; its name is its node in a hook-up.
struct Shield {
    std::string name;
    ShieldForm form = ShieldForm::Foil;
    units::Quantity thickness = 25e-6;     ///< of a foil, m
    catalog::PartRef<catalog::Wire> wire;  ///< of an open winding
    units::Quantity marginLow = 0;
    units::Quantity marginHigh = 0;
    std::string terminal;                ///< where it comes out; "" with its name alone
    bool overEnds = false;               ///< of a foil: it also covers both ends of what lies beneath
    units::Quantity leadInductance = 0;  ///< of the wire from the shield to its terminal, H; some 20 nH for 25 mm
    json::Value extra;
    bool operator==(const Shield&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Shield& s) {
    visit.need("name", s.name);
    visit.may("form", s.form);
    visit.may("thickness", s.thickness, json::aboveUpTo(0, 0.002).in("m"));
    visit.may("wire", s.wire);
    visit.may("margin_low", s.marginLow, json::within(0, 0.5).in("m"));
    visit.may("margin_high", s.marginHigh, json::within(0, 0.5).in("m"));
    visit.may("over_ends", s.overEnds);
    visit.may("terminal", s.terminal);
    visit.may("lead_inductance", s.leadInductance, json::within(0, 1e-3).in("H"));
}

/// One item of the winding order; in files {"section": {…}}, {"barrier": {…}} or {"shield": {…}}.
struct Item {
    std::variant<Section, Barrier, Shield> what;
    bool operator==(const Item&) const = default;
    [[nodiscard]] const Section* section() const { return std::get_if<Section>(&what); }
    [[nodiscard]] const Barrier* barrier() const { return std::get_if<Barrier>(&what); }
    [[nodiscard]] const Shield* shield() const { return std::get_if<Shield>(&what); }
    [[nodiscard]] Section* section() { return std::get_if<Section>(&what); }
    [[nodiscard]] Barrier* barrier() { return std::get_if<Barrier>(&what); }
    [[nodiscard]] Shield* shield() { return std::get_if<Shield>(&what); }
    void readSelf(const json::Value& from, const std::string& place, json::Reader& reader);
    [[nodiscard]] json::Value writeSelf() const;
};

/// What is wound in one chamber on one leg, from the core outward.
struct Place {
    int leg = 1;      ///< 1; two-leg cores also 2
    int chamber = 1;  ///< of the bobbin, counted from 1
    std::vector<Item> order;
    json::Value extra;
    bool operator==(const Place&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Place& p) {
    visit.may("leg", p.leg, json::within(1, 2));
    visit.may("chamber", p.chamber, json::within(1, 20));
    visit.need("order", p.order);
}

/// Where an item stands: index of the place and of the item in its order.
struct ItemIndex {
    int place = 0;
    int item = 0;
    auto operator<=>(const ItemIndex&) const = default;
};

}  // namespace design
