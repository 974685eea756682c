// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of terminals and windings.
#include <cmath>
#include <map>
#include <set>

#include "design/inspection.h"

namespace design {

namespace {

void checkPin(const Inspection& in, std::size_t i, std::map<int, std::string>& used) {
    const Terminal& t = in.design.terminals[i];
    const std::string at = Inspection::at("terminals", i, "pin");
    if (t.pin == 0) return;
    if (const auto* bobbin = in.part(in.design.bobbin)) {
        const auto same = [&](const catalog::Pin& p) { return p.number == t.pin; };
        if (bobbin->pins.empty())
            in.fault(at, std::to_string(t.pin), "0, which is a lead: the bobbin has no pins");
        else if (std::none_of(bobbin->pins.begin(), bobbin->pins.end(), same))
            in.fault(at, std::to_string(t.pin), "the number of a pin that the bobbin has");
    }
    if (const auto [before, fresh] = used.emplace(t.pin, t.name); !fresh)
        in.fault(at, std::to_string(t.pin) + ", where terminal " + Inspection::quoted(before->second) + " is already",
                 "a pin that no other terminal uses");
}

void checkConductor(const Inspection& in, const Winding& w, const std::string& at) {
    if (w.wire.empty() && !w.foil) return in.fault(at + "/wire", "nothing", "a wire, or a foil under the key \"foil\"");
    if (!w.wire.empty() && w.foil) return in.fault(at + "/foil", "a foil and a wire", "one of the two");
    const auto* sheet = in.part(in.design.core.sheet);
    if (!sheet) return;
    const double room = std::min<double>(sheet->windowWidth, sheet->windowHeight);
    if (const auto* wire = in.part(w.wire); wire && wire->overallDiameter >= room)
        in.fault(at + "/wire", "a wire " + Inspection::length(wire->overallDiameter) + " thick",
                 "a wire thinner than the window, " + Inspection::length(room));
    if (w.foil && w.foil->width > sheet->windowHeight)
        in.fault(at + "/foil/width", Inspection::length(w.foil->width),
                 "at most the window's height, " + Inspection::length(sheet->windowHeight));
}

void checkOrder(const Inspection& in, const Winding& w, const std::string& at) {
    if (w.order.empty()) return;
    std::set<std::string> have;
    for (const Section* s : sectionsOf(in.design, w)) have.insert(s->name);
    std::set<std::string> listed;
    for (std::size_t i = 0; i < w.order.size(); ++i) {
        const std::string here = at + Inspection::at("order", i);
        if (!have.count(w.order[i]))
            in.fault(here, Inspection::quoted(w.order[i]), "the name of a section of winding " + w.name);
        else if (!listed.insert(w.order[i]).second)
            in.fault(here, Inspection::quoted(w.order[i]) + " a second time", "each section once");
    }
    for (const std::string& name : have)
        if (!listed.count(name))
            in.fault(at + "/order", "a list without section " + Inspection::quoted(name),
                     "a list with every section of winding " + w.name + " once");
}

void checkTaps(const Inspection& in, const Winding& w, const std::string& at) {
    const double turns = conductorTurns(in.design, w);
    for (std::size_t i = 0; i < w.taps.size(); ++i) {
        const std::string here = at + Inspection::at("taps", i);
        in.terminal(here + "/terminal", w.taps[i].terminal);
        if (w.taps[i].terminal == w.start || w.taps[i].terminal == w.finish)
            in.fault(here + "/terminal", Inspection::quoted(w.taps[i].terminal) + ", an end of the winding",
                     "a terminal of its own for each tap");
        for (std::size_t j = 0; j < i; ++j)
            if (w.taps[i].terminal == w.taps[j].terminal)
                in.fault(here + "/terminal", Inspection::quoted(w.taps[i].terminal) + " a second time",
                         "a terminal of its own for each tap");
        if (w.taps[i].turns >= turns)
            in.fault(here + "/turns", units::shortest(w.taps[i].turns),
                     "less than the winding's " + units::shortest(turns) + " turns, counted from its start");
    }
}

void checkWinding(const Inspection& in, std::size_t i) {
    const Winding& w = in.design.windings[i];
    const std::string at = Inspection::at("windings", i);
    if (w.name.find_first_of(".@") != std::string::npos)
        in.fault(at + "/name", Inspection::quoted(w.name), "a name without \".\" and \"@\"");
    checkConductor(in, w, at);
    in.terminal(at + "/start", w.start);
    in.terminal(at + "/finish", w.finish);
    if (w.start.empty()) in.fault(at + "/start", "\"\"", "the name of a terminal in /terminals");
    if (w.finish.empty()) in.fault(at + "/finish", "\"\"", "the name of a terminal in /terminals");
    if (w.start == w.finish && !w.start.empty())
        in.fault(at + "/finish", Inspection::quoted(w.finish) + ", where the winding also starts",
                 "another terminal than its start: a winding is not connected to itself");
    if (sectionsOf(in.design, w).empty())
        in.fault(at, "a winding without sections", "at least one section of winding " + w.name + " in /coil");
    checkOrder(in, w, at);
    checkTaps(in, w, at);
}

}  // namespace

void checkTerminals(const Inspection& in) {
    in.names("/terminals", in.design.terminals, "terminal");
    std::map<int, std::string> used;
    for (std::size_t i = 0; i < in.design.terminals.size(); ++i) {
        const std::string& name = in.design.terminals[i].name;
        const std::string at = Inspection::at("terminals", i, "name");
        if (name == "core" || name == "earth")
            in.fault(at, Inspection::quoted(name),
                     "a name other than \"core\" and \"earth\", which are nodes themselves");
        if (!name.empty() && name.back() == '>')
            in.fault(at, Inspection::quoted(name), "a name that does not end in \">\", which marks inner joints");
        checkPin(in, i, used);
    }
}

void checkWindings(const Inspection& in) {
    if (in.design.windings.empty()) in.fault("/windings", "an empty list", "at least one winding");
    in.names("/windings", in.design.windings, "winding");
    for (std::size_t i = 0; i < in.design.windings.size(); ++i) checkWinding(in, i);
}

}  // namespace design
