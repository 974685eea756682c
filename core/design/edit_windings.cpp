// SPDX-License-Identifier: GPL-3.0-or-later
// Edits that add a winding and take one out.
#include <algorithm>
#include <set>

#include "design/edit.h"
#include "design/figure_owner.h"
#include "design/named.h"

namespace design {

namespace {

/// A terminal at the lowest pin that is free, named after it; a lead named by the next free number where there is none.
std::string addTerminal(Design& d, const catalog::Bobbin* bobbin) {
    std::vector<int> pins;
    if (bobbin != nullptr)
        for (const auto& pin : bobbin->pins) pins.push_back(pin.number);
    std::sort(pins.begin(), pins.end());
    const auto taken = [&](int number) {
        return has(d.terminals, std::to_string(number)) ||
               std::any_of(d.terminals.begin(), d.terminals.end(), [&](const auto& t) { return t.pin == number; });
    };
    const auto free = std::find_if_not(pins.begin(), pins.end(), taken);
    Terminal fresh;
    int number = free == pins.end() ? 1 : *free;
    while (free == pins.end() && taken(number)) ++number;
    fresh.name = std::to_string(number);
    fresh.pin = free == pins.end() ? 0 : number;
    d.terminals.push_back(fresh);
    return fresh.name;
}

/// The section at the outside: before it the outermost barrier again, or behind it where one closes the coil.
void wind(Place& place, const Item& section) {
    const auto last = std::find_if(place.order.rbegin(), place.order.rend(),
                                   [](const Item& item) { return item.barrier() != nullptr; });
    if (last == place.order.rend()) return place.order.push_back(section);
    const Item barrier = *last;
    const bool closed = last == place.order.rbegin();
    place.order.push_back(closed ? section : barrier);
    place.order.push_back(closed ? barrier : section);
}

/// Takes the winding's sections out of a place, each with the barrier outside it, else the one inside.
void unwind(Place& place, const std::string& winding) {
    auto& order = place.order;
    for (std::size_t i = order.size(); i-- > 0;) {
        const Section* s = order[i].section();
        if (s == nullptr || s->winding != winding) continue;
        const auto at = order.begin() + static_cast<std::ptrdiff_t>(i);
        if (i + 1 < order.size() && order[i + 1].barrier() != nullptr)
            order.erase(at, at + 2);
        else if (i > 0 && order[i - 1].barrier() != nullptr)
            order.erase(at - 1, at + 1), --i;
        else
            order.erase(at);
    }
}

/// Terminals that a winding, a section or a shield is soldered to.
std::set<std::string> solderedTerminals(const Design& d) {
    std::set<std::string> all;
    for (const Winding& w : d.windings) {
        all.insert({w.start, w.finish});
        for (const Tap& t : w.taps) all.insert(t.terminal);
    }
    for (const Place& place : d.coil)
        for (const Item& item : place.order) {
            if (const Section* s = item.section()) all.insert({s->start, s->finish});
            if (const Shield* s = item.shield()) all.insert(s->terminal);
        }
    return all;
}

void forgetTerminals(Design& d, const std::set<std::string>& gone) {
    const auto lost = [&](const std::string& name) { return gone.contains(name); };
    std::erase_if(d.terminals, [&](const Terminal& t) { return lost(t.name); });
    for (HookUp& h : d.hookUps)
        for (const std::string& terminal : gone) forgetNode(h, terminal);
    if (d.conditions.phantom && lost(d.conditions.phantom->centreTap)) d.conditions.phantom.reset();
}

void forgetPort(Design& d, const std::string& port) {
    std::erase_if(d.ports, [&](const Port& p) { return p.name == port; });
    for (HookUp& h : d.hookUps) std::erase_if(h.ports, [&](const PortUse& u) { return u.port == port; });
    if (d.conditions.phantom && d.conditions.phantom->port == port) d.conditions.phantom.reset();
    std::erase_if(d.brief.promises, [&](const Promise& p) {
        return p.port == port || (isOfPort(p.figure) && namesOwner(p.figure, port));
    });
}

}  // namespace

DesignPtr addWinding(const Design& d, const catalog::Catalog& shop) {
    return changed(d, [&](Design& copy) {
        if (d.windings.empty() || d.coil.empty()) return;
        Winding fresh = d.windings.back();
        fresh.name = "S";
        for (int n = 2; has(d.windings, fresh.name) || has(d.ports, fresh.name); ++n)
            fresh.name = "S" + std::to_string(n);
        fresh.taps.clear();
        fresh.order.clear();
        const auto* bobbin = part(d, d.bobbin, shop);
        fresh.start = addTerminal(copy, bobbin);
        fresh.finish = addTerminal(copy, bobbin);
        Section section;
        section.winding = fresh.name;
        section.name = "a";
        section.turns = conductorTurns(d, d.windings.back());
        wind(copy.coil.front(), {section});
        copy.ports.push_back({fresh.name, fresh.start, fresh.finish, {}});
        copy.windings.push_back(std::move(fresh));
    });
}

DesignPtr removeWinding(const Design& d, const std::string& winding) {
    return changed(d, [&](Design& copy) {
        if (d.windings.size() < 2 || !has(d.windings, winding)) return;
        const auto before = solderedTerminals(d);
        std::erase_if(copy.windings, [&](const Winding& w) { return w.name == winding; });
        for (Place& place : copy.coil) unwind(place, winding);
        std::set<std::string> gone = before;
        for (const std::string& kept : solderedTerminals(copy)) gone.erase(kept);
        for (const Port& p : d.ports)
            if (gone.contains(p.plus) || gone.contains(p.minus)) forgetPort(copy, p.name);
        forgetTerminals(copy, gone);
        std::erase_if(copy.conditions.directCurrents, [&](const DirectCurrent& c) { return c.winding == winding; });
        std::erase_if(copy.brief.promises,
                      [&](const Promise& p) { return !isOfPort(p.figure) && namesOwner(p.figure, winding); });
    });
}

}  // namespace design
