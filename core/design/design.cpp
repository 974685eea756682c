// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/design.h"

#include <algorithm>
#include <cmath>

namespace design {

namespace {

template <class Thing>
const Thing* named(const std::vector<Thing>& things, std::string_view name) {
    const auto it = std::find_if(things.begin(), things.end(), [&](const Thing& t) { return t.name == name; });
    return it == things.end() ? nullptr : &*it;
}

}  // namespace

const Winding* winding(const Design& d, std::string_view name) {
    return named(d.windings, name);
}

const HookUp* hookUp(const Design& d, std::string_view name) {
    if (name.empty()) return d.hookUps.empty() ? nullptr : &d.hookUps.front();
    return named(d.hookUps, name);
}

const Port* port(const Design& d, std::string_view name) {
    return named(d.ports, name);
}

const Section* section(const Design& d, std::string_view winding, std::string_view name) {
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Section* s = item.section(); s && s->winding == winding && s->name == name) return s;
    return nullptr;
}

std::vector<const Section*> sectionsOf(const Design& d, const Winding& w) {
    std::vector<const Section*> found;
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Section* s = item.section(); s && s->winding == w.name) found.push_back(s);
    const auto rank = [&](const Section* s) { return std::find(w.order.begin(), w.order.end(), s->name); };
    std::stable_sort(found.begin(), found.end(), [&](auto* a, auto* b) { return rank(a) < rank(b); });
    return found;
}

double seriesTurns(const Design& d, const Winding& w) {
    double sum = 0;
    for (const Section* s : sectionsOf(d, w)) {
        sum += s->reversed ? -s->turns.value : s->turns.value;
        if (w.connection == Connection::Parallel) break;
    }
    return sum;
}

double conductorTurns(const Design& d, const Winding& w) {
    double sum = 0;
    for (const Section* s : sectionsOf(d, w)) {
        sum += s->turns.value;
        if (w.connection == Connection::Parallel) break;
    }
    return sum;
}

std::string nodeOf(const Design& d, std::string_view name) {
    if (name == "core" || name == "earth" || named(d.terminals, name)) return std::string(name);
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Shield* s = item.shield(); s && s->name == name)
                return s->terminal.empty() ? s->name : s->terminal;
    return {};
}

SectionEnds sectionEnds(const Design& d, const Section& s) {
    const auto inner = [](const Section& of) { return of.label() + ">"; };
    SectionEnds ends{s.start, s.finish};
    const Winding* w = winding(d, s.winding);
    if (!w) return {ends.start.empty() ? s.label() + "<" : ends.start, ends.finish.empty() ? inner(s) : ends.finish};
    const auto all = sectionsOf(d, *w);
    const auto here = std::find_if(all.begin(), all.end(), [&](const Section* other) { return other->name == s.name; });
    const bool parallel = w->connection == Connection::Parallel;
    if (ends.start.empty()) {
        if (parallel || here == all.begin() || here == all.end())
            ends.start = w->start;
        else
            ends.start = (*std::prev(here))->finish.empty() ? inner(**std::prev(here)) : (*std::prev(here))->finish;
    }
    if (ends.finish.empty()) {
        const bool last = here == all.end() || std::next(here) == all.end();
        ends.finish = parallel || last ? w->finish : inner(s);
    }
    return ends;
}

}  // namespace design
