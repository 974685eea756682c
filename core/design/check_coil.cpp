// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of what is wound.
#include <cmath>
#include <set>
#include <tuple>

#include "design/inspection.h"
#include "units/joined.h"

namespace design {

namespace {

const catalog::Chamber* chamberOf(const Inspection& in, const Place& place) {
    const auto* bobbin = in.part(in.design.bobbin);
    const auto index = static_cast<std::size_t>(place.chamber - 1);
    return bobbin && index < bobbin->chambers.size() ? &bobbin->chambers[index] : nullptr;
}

void checkPlace(const Inspection& in, std::size_t p) {
    const Place& place = in.design.coil[p];
    const std::string at = Inspection::at("coil", p);
    if (place.leg > 1 && in.design.core.kind == CoreKind::Shell)
        in.fault(at + "/leg", std::to_string(place.leg), "1: a shell core carries its coil on one leg");
    if (const auto* bobbin = in.part(in.design.bobbin); bobbin && !bobbin->chambers.empty() && !chamberOf(in, place))
        in.fault(at + "/chamber", std::to_string(place.chamber),
                 "a chamber that the bobbin has: 1 to " + std::to_string(bobbin->chambers.size()));
    for (std::size_t before = 0; before < p; ++before)
        if (in.design.coil[before].leg == place.leg && in.design.coil[before].chamber == place.chamber)
            in.fault(
                at,
                "leg " + std::to_string(place.leg) + ", chamber " + std::to_string(place.chamber) + " a second time",
                "each chamber of a leg once");
}

template <class Wound>
void checkMargins(const Inspection& in, const Place& place, const Wound& wound, const std::string& at) {
    const auto* chamber = chamberOf(in, place);
    const double margins = wound.marginLow + wound.marginHigh;
    if (!chamber || margins == 0) return;
    const double width = chamber->high - chamber->low;
    if (width > 0 && margins >= width)
        in.fault(at + "/margin_high", "margins that add up to " + Inspection::length(margins),
                 "less than the chamber's width, " + Inspection::length(width));
}

void checkSection(const Inspection& in, const Section& s, const std::string& at) {
    if (s.name.empty()) in.fault(at + "/name", "\"\"", "a name of at least one character");
    if (s.name.find_first_of(".@") != std::string::npos)
        in.fault(at + "/name", Inspection::quoted(s.name), "a name without \".\" and \"@\"");
    if (!winding(in.design, s.winding))
        in.fault(at + "/winding", Inspection::quoted(s.winding), "the name of a winding in /windings");
    const double halves = 2 * s.turns.value;
    if (halves != std::floor(halves))
        in.fault(at + "/turns", units::shortest(s.turns), "whole turns, or halves on a shell core");
    else if (std::fmod(halves, 2) != 0 && in.design.core.kind != CoreKind::Shell)
        in.fault(at + "/turns", units::shortest(s.turns), "whole turns: halves exist on a shell core only");
    in.terminal(at + "/start", s.start);
    in.terminal(at + "/finish", s.finish);
    if (!s.start.empty() && s.start == s.finish)
        in.fault(at + "/finish", Inspection::quoted(s.finish) + ", where the section also starts",
                 "another terminal than its start: a section is not connected to itself");
}

void checkShield(const Inspection& in, const Shield& s, const std::string& at) {
    if (s.name.empty()) in.fault(at + "/name", "\"\"", "a name of at least one character");
    if (s.name == "core" || s.name == "earth")
        in.fault(at + "/name", Inspection::quoted(s.name),
                 "a name other than \"core\" and \"earth\", which are nodes themselves");
    for (const Terminal& t : in.design.terminals)
        if (t.name == s.name && s.terminal != s.name)
            in.fault(at + "/name", Inspection::quoted(s.name) + ", which is a terminal",
                     "a name of its own, or the terminal also under \"terminal\"");
    if (s.form == ShieldForm::Winding && s.wire.empty())
        in.fault(at + "/wire", "nothing", "a wire: the shield is an open winding");
    in.terminal(at + "/terminal", s.terminal);
}

/// A foil folded over the ends of sections needs room for itself there.
void checkFolded(const Inspection& in, const Place& place, std::size_t index, const std::string& at) {
    const Shield& shield = *place.order[index].shield();
    if (!shield.overEnds) return;
    if (shield.form != ShieldForm::Foil)
        return in.fault(at + "/over_ends", "true of an open winding", "true of a foil only");
    bool covers = false;
    while (index-- > 0 && !place.order[index].shield()) {
        const Section* s = place.order[index].section();
        if (s == nullptr) continue;
        covers = true;
        for (const auto& [own, foil, end] : {std::tuple{s->marginLow.value, shield.marginLow.value, "low"},
                                             {s->marginHigh.value, shield.marginHigh.value, "high"}})
            if (own <= foil + shield.thickness)
                in.fault(
                    at + "/over_ends",
                    units::joined({s->label(), " with a margin of ", Inspection::length(own), " at its ", end, " end"}),
                    "sections beneath with margins above the foil's own and its thickness, " +
                        Inspection::length(foil + shield.thickness));
    }
    if (!covers) in.fault(at + "/over_ends", "no section between it and the shield further in", "a section to cover");
}

/// Goes through one place and reports doubled names of sections and shields across the whole coil.
void checkItems(const Inspection& in, std::size_t p, std::set<std::string>& labels, std::set<std::string>& shields) {
    const Place& place = in.design.coil[p];
    for (std::size_t i = 0; i < place.order.size(); ++i) {
        const std::string at = Inspection::at("coil", p) + Inspection::at("order", i);
        if (const Section* s = place.order[i].section()) {
            checkSection(in, *s, at + "/section");
            checkMargins(in, place, *s, at + "/section");
            if (!labels.insert(s->label()).second)
                in.fault(at + "/section/name", Inspection::quoted(s->name) + " a second time",
                         "a name that no other section of winding " + s->winding + " has");
        }
        if (const Shield* s = place.order[i].shield()) {
            checkShield(in, *s, at + "/shield");
            checkFolded(in, place, i, at + "/shield");
            checkMargins(in, place, *s, at + "/shield");
            if (!shields.insert(s->name).second)
                in.fault(at + "/shield/name", Inspection::quoted(s->name) + " a second time",
                         "a name that no other shield has");
        }
    }
}

}  // namespace

void checkCoil(const Inspection& in) {
    std::set<std::string> labels, shields;
    for (std::size_t p = 0; p < in.design.coil.size(); ++p) {
        checkPlace(in, p);
        checkItems(in, p, labels, shields);
    }
}

}  // namespace design
