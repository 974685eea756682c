// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/rename.h"

#include <algorithm>

#include "design/edit.h"
#include "design/figure_owner.h"
#include "design/named.h"
#include "units/fault.h"

namespace design {

namespace {

template <class Visit>
void eachItem(Design& d, Visit&& visit) {
    for (Place& place : d.coil)
        for (Item& item : place.order) visit(item);
}

bool shieldNamed(const Design& d, const std::string& name) {
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Shield* s = item.shield(); s && s->name == name) return true;
    return false;
}

void refuse(const std::string& name, const std::string& allowed) {
    units::refuse("", '"' + name + '"', allowed);
}

void demand(bool taken, const std::string& to, const std::string& what) {
    if (to.empty()) refuse(to, "a name of at least one character");
    if (taken) refuse(to, "a name that no other " + what + " has");
}

/// `from` becomes `to`; anything else stays.
struct Renaming {
    const std::string& from;
    const std::string& to;
    void operator()(std::string& name) const {
        if (name == from) name = to;
    }
    void operator()(std::vector<std::string>& names) const {
        for (std::string& name : names) (*this)(name);
    }
};

/// A node's name in every port, strap and earth.
void renameNode(Design& d, const Renaming& rename) {
    for (Port& p : d.ports) rename(p.plus), rename(p.minus);
    for (HookUp& h : d.hookUps) {
        rename(h.earths);
        for (auto& strap : h.straps) rename(strap);
    }
}

/// Owners behind a figure's quantity: "capacitance.P.foil 1" names P and "foil 1". Names of ports and shields may hold
/// a dot themselves, so the whole rest and both its ends are looked at.
void renameOwner(std::string& figure, const Renaming& rename) {
    const auto dot = figure.find('.');
    if (dot == std::string::npos) return;
    const std::string quantity = figure.substr(0, dot);
    std::string rest = figure.substr(dot + 1);
    const std::string first = rename.from + ".", last = "." + rename.from;
    if (rest == rename.from) {
        rest = rename.to;
    } else {
        if (rest.size() > last.size() && rest.compare(rest.size() - last.size(), last.size(), last) == 0)
            rest.replace(rest.size() - last.size(), last.size(), "." + rename.to);
        if (rest.rfind(first, 0) == 0) rest.replace(0, first.size(), rename.to + ".");
    }
    figure = quantity + "." + rest;
}

void renameInFigures(Design& d, const Renaming& rename, bool port) {
    for (Promise& p : d.brief.promises)
        if (isOfPort(p.figure) == port) renameOwner(p.figure, rename);
}

}  // namespace

DesignPtr renameWinding(const Design& d, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(has(d.windings, to), to, "winding");
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        for (Winding& w : copy.windings) rename(w.name);
        eachItem(copy, [&](Item& item) {
            if (Section* s = item.section()) rename(s->winding);
        });
        for (DirectCurrent& c : copy.conditions.directCurrents) rename(c.winding);
        renameInFigures(copy, rename, false);
    });
}

DesignPtr renameSection(const Design& d, const std::string& winding, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(section(d, winding, to) != nullptr, to, "section of winding " + winding);
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        for (Winding& w : copy.windings)
            if (w.name == winding) rename(w.order);
        eachItem(copy, [&](Item& item) {
            if (Section* s = item.section(); s && s->winding == winding) rename(s->name);
        });
    });
}

DesignPtr renameShield(const Design& d, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(shieldNamed(d, to), to, "shield");
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        eachItem(copy, [&](Item& item) {
            if (Shield* s = item.shield()) rename(s->name);
        });
        if (!has(d.terminals, from)) renameNode(copy, rename);  // else the name means the terminal it comes out at
        renameInFigures(copy, rename, false);
    });
}

DesignPtr renameTerminal(const Design& d, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(has(d.terminals, to) || shieldNamed(d, to), to, "terminal or shield");
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        for (Terminal& t : copy.terminals) rename(t.name);
        for (Winding& w : copy.windings) {
            rename(w.start), rename(w.finish);
            for (Tap& t : w.taps) rename(t.terminal);
        }
        eachItem(copy, [&](Item& item) {
            if (Section* s = item.section()) rename(s->start), rename(s->finish);
            if (Shield* s = item.shield()) rename(s->terminal);
        });
        renameNode(copy, rename);
    });
}

DesignPtr renamePort(const Design& d, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(has(d.ports, to), to, "port");
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        for (Port& p : copy.ports) rename(p.name);
        for (HookUp& h : copy.hookUps)
            for (PortUse& u : h.ports) rename(u.port);
        for (Promise& p : copy.brief.promises) rename(p.port);
        renameInFigures(copy, rename, true);
    });
}

DesignPtr renameHookUp(const Design& d, const std::string& from, const std::string& to) {
    if (from == to) return changed(d, [](Design&) {});
    demand(has(d.hookUps, to), to, "hook-up");
    return changed(d, [&](Design& copy) {
        const Renaming rename{from, to};
        for (HookUp& h : copy.hookUps) rename(h.name);
        for (Promise& p : copy.brief.promises) rename(p.hookUp);
        for (Mask& m : copy.brief.masks) rename(m.hookUp);
    });
}

}  // namespace design
