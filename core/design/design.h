// SPDX-License-Identifier: GPL-3.0-or-later
// A design: the value that says everything needed to build one transformer. Immutable once made.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "catalog/bobbin.h"
#include "catalog/catalog.h"
#include "design/brief.h"
#include "design/coil.h"
#include "design/core.h"
#include "design/fittings.h"
#include "design/hook_up.h"
#include "design/winding.h"

namespace design {

/// What the coil is soaked in: varnish or potting compound.
struct Filling {
    catalog::PartRef<catalog::Insulation> compound;  ///< empty: stays dry
    bool hardPotted = false;
    json::Value extra = nullptr;
    bool operator==(const Filling&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Filling& f) {
    visit.need("compound", f.compound);
    visit.may("hard_potted", f.hardPotted);
}

/// A direct current through a winding.
struct DirectCurrent {
    std::string winding;
    units::Quantity current = 0;  ///< A, from start to finish
    json::Value extra = nullptr;
    bool operator==(const DirectCurrent&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, DirectCurrent& d) {
    visit.need("winding", d.winding);
    visit.need("current", d.current, json::within(-100, 100).in("A"));
}

/// A phantom supply on a port (IEC 61938: P48 48 V behind 6.81 kohm in each leg, at most 10 mA; the feeds equal within
/// 0.4 %: from memory). With `centreTap` the supply comes in there, behind both resistors in parallel, instead.
struct PhantomFeed {
    std::string port;
    units::Quantity voltage = 48;
    units::Quantity resistance = 6810;
    units::Quantity mismatch = 0.004;  ///< greatest difference of the two resistors over their mean
    units::Quantity current = 0.01;    ///< A that the microphone draws, half from each leg
    std::string centreTap;             ///< terminal; "": a resistor to each leg
    bool afterShort = false;           ///< one leg was shorted to earth before: the core is still magnetised
    json::Value extra = nullptr;
    bool operator==(const PhantomFeed&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, PhantomFeed& p) {
    visit.need("port", p.port);
    visit.may("feed_voltage", p.voltage, json::within(0, 100).in("V"));
    visit.may("feed_resistance", p.resistance, json::within(100, 1e6).in("ohm"));
    visit.may("feed_mismatch", p.mismatch, json::within(0, 0.2));
    visit.may("feed_current", p.current, json::within(0, 0.1).in("A"));
    visit.may("centre_tap", p.centreTap);
    visit.may("after_short", p.afterShort);
}

/// Under which conditions everything is computed.
struct Conditions {
    units::Quantity temperature = 20;  ///< degree Celsius
    bool filled = false;               ///< with the filling, or dry
    std::vector<DirectCurrent> directCurrents;
    std::optional<PhantomFeed> phantom;
    json::Value extra = nullptr;
    bool operator==(const Conditions&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Conditions& c) {
    visit.may("temperature", c.temperature, json::within(-60, 200).in("degree Celsius"));
    visit.may("filled", c.filled);
    visit.may("direct_currents", c.directCurrents);
    visit.may("phantom", c.phantom);
}

/// What the computation takes into account; named with every result.
struct Assumptions {
    Ends ends = Ends::Beyond;
    bool foilEddies = false;
    bool proximity = true;
    bool dielectricLoss = true;
    bool leadOuts = false;
    json::Value extra = nullptr;
    bool operator==(const Assumptions&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Assumptions& a) {
    visit.may("ends", a.ends);
    visit.may("foil_eddies", a.foilEddies);
    visit.may("proximity", a.proximity);
    visit.may("dielectric_loss", a.dielectricLoss);
    visit.may("lead_outs", a.leadOuts);
}

/// The whole design.
struct Design {
    std::string name;
    std::string partNumber;
    std::string revision = "A";
    std::string note;
    Brief brief;
    Core core;
    catalog::PartRef<catalog::Bobbin> bobbin;
    std::vector<Terminal> terminals;
    std::vector<Winding> windings;
    std::vector<Place> coil;
    std::optional<Filling> filling;
    std::vector<FittingUse> fittings;
    Sundries sundries;
    std::vector<Port> ports;
    std::vector<HookUp> hookUps;  ///< the first is what is shown unless another is named
    Conditions conditions;
    Assumptions assumptions;
    catalog::Catalog parts;  ///< copies of the catalog entries used, as they were when saved; they rule
    json::Value extra;
    bool operator==(const Design&) const = default;
};
using DesignPtr = std::shared_ptr<const Design>;

template <class Visitor>
void fields(Visitor& visit, Design& d) {
    visit.need("name", d.name);
    visit.may("part_number", d.partNumber);
    visit.may("revision", d.revision);
    visit.may("note", d.note);
    visit.may("brief", d.brief);
    visit.need("core", d.core);
    visit.need("bobbin", d.bobbin);
    visit.need("terminals", d.terminals);
    visit.need("windings", d.windings);
    visit.need("coil", d.coil);
    visit.may("filling", d.filling);
    visit.may("fittings", d.fittings);
    visit.may("sundries", d.sundries);
    visit.need("ports", d.ports);
    visit.need("hook_ups", d.hookUps);
    visit.may("conditions", d.conditions);
    visit.may("assumptions", d.assumptions);
}

inline constexpr int formatVersion = 1;

/// The catalog entry behind a reference of this design; null if unknown (then `check` has said so).
template <class Part>
[[nodiscard]] const Part* part(const Design& d, const catalog::PartRef<Part>& ref, const catalog::Catalog& shop) {
    return catalog::find(ref, d.parts, shop);
}

/// The named thing, or null. An empty name means the first hook-up.
[[nodiscard]] const Winding* winding(const Design& d, std::string_view name);
[[nodiscard]] const HookUp* hookUp(const Design& d, std::string_view name);
[[nodiscard]] const Port* port(const Design& d, std::string_view name);

/// A winding's sections in electrical order from start to finish.
[[nodiscard]] std::vector<const Section*> sectionsOf(const Design& d, const Winding& w);
/// Turns from start to finish: the sum of its sections in series, with sign for reversed ones; of the first when in
/// parallel.
[[nodiscard]] double seriesTurns(const Design& d, const Winding& w);

/// Turns along the conductor from start to finish, whatever their sense: what a tap's position is counted on.
[[nodiscard]] double conductorTurns(const Design& d, const Winding& w);
/// The section with this name, or null.
[[nodiscard]] const Section* section(const Design& d, std::string_view winding, std::string_view name);
/// The one name of a node of a hook-up: a shield that comes out at a terminal is that terminal; every other node
/// (terminal, shield, "core", "earth") is itself. Empty if there is no such node.
[[nodiscard]] std::string nodeOf(const Design& d, std::string_view name);

/// The two nodes a section ends at.
struct SectionEnds {
    std::string start;
    std::string finish;
};
/// Start: the section's own terminal, else the winding's start (first, or parallel), else where the one before it
/// ends. Finish: its own, else the winding's finish (last, or parallel), else an inner node "P.a>".
[[nodiscard]] SectionEnds sectionEnds(const Design& d, const Section& s);

}  // namespace design
