// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/coil_difference.h"

#include <algorithm>
#include <map>

#include "design/alignment.h"
#include "design/description.h"

namespace design {

namespace {

using Lines = std::vector<std::string>;

/// What an item is called; empty for a barrier.
std::string called(const Item& item) {
    if (const Section* s = item.section()) return s->label();
    if (const Shield* s = item.shield()) return (s->form == ShieldForm::Foil ? "foil " : "shield winding ") + s->name;
    return {};
}

/// What makes two items of two designs the same one; empty for a barrier.
std::string identity(const Item& item) {
    if (const Section* s = item.section()) return "section " + s->label();
    if (const Shield* s = item.shield()) return "shield " + s->name;
    return {};
}

std::string placeWords(const Place& place) {
    return (place.leg > 1 ? "leg " + std::to_string(place.leg) + ", " : std::string()) + "chamber " +
           std::to_string(place.chamber);
}

std::string plyWords(const Ply& ply) {
    return (ply.insulation.own ? "own part" : ply.insulation.key) + std::string(" ") +
           units::writeExact(units::Kind::Length, ply.thickness);
}

/// "outside P.a", or "next to the core".
std::string whereWords(const Place& place, std::size_t index) {
    while (index-- > 0)
        if (const std::string name = called(place.order[index]); !name.empty()) return "outside " + name;
    return "next to the core";
}

struct Stand {
    const Place* place = nullptr;
    std::size_t index = 0;
    [[nodiscard]] const Item& item() const { return place->order[index]; }
};

std::map<std::string, Stand> stands(const Design& d) {
    std::map<std::string, Stand> all;
    for (const Place& place : d.coil)
        for (std::size_t i = 0; i < place.order.size(); ++i)
            if (const std::string id = identity(place.order[i]); !id.empty()) all.emplace(id, Stand{&place, i});
    return all;
}

bool samePlace(const Place& a, const Place& b) {
    return a.leg == b.leg && a.chamber == b.chamber;
}

std::string added(const Stand& here) {
    const Section* s = here.item().section();
    const std::string turns = s ? " with " + units::shortest(s->turns) + " turns" : "";
    return called(here.item()) + turns + " added " + whereWords(*here.place, here.index);
}

void compareNamed(const Design& a, const Design& b, Lines& lines) {
    const auto before = stands(a), after = stands(b);
    for (const Place& place : a.coil)
        for (const Item& item : place.order) {
            const auto here = after.find(identity(item));
            if (identity(item).empty()) continue;
            if (here == after.end()) {
                lines.push_back(called(item) + " removed");
                continue;
            }
            const Item& now = here->second.item();
            if (const Section* s = item.section())
                compare(s->label(), description(*s), description(*now.section()), lines);
            if (const Shield* s = item.shield())
                compare(called(item), description(*s), description(*now.shield()), lines);
            if (!samePlace(place, *here->second.place))
                lines.push_back(called(item) + " moved to " + placeWords(*here->second.place));
        }
    for (const Place& place : b.coil)
        for (std::size_t i = 0; i < place.order.size(); ++i)
            if (const std::string id = identity(place.order[i]); !id.empty() && !before.count(id))
                lines.push_back(added({&place, i}));
}

/// Position of a named item in a place, or -1.
std::ptrdiff_t position(const Place& place, const std::string& id) {
    const auto it =
        std::find_if(place.order.begin(), place.order.end(), [&](const Item& i) { return identity(i) == id; });
    return it == place.order.end() ? -1 : it - place.order.begin();
}

std::string movedWords(const Place& a, const Place& b, const std::string& name, std::ptrdiff_t from,
                       std::ptrdiff_t to) {
    std::string past;
    bool outward = false;
    for (const Item& other : a.order) {
        const std::string id = identity(other);
        const auto before = id.empty() ? -1 : position(a, id), after = id.empty() ? -1 : position(b, id);
        if (before < 0 || after < 0 || before == from || (before < from) == (after < to)) continue;
        outward = before > from;
        past += (past.empty() ? "" : " and ") + called(other);
    }
    return past.empty() ? std::string() : name + " moved " + (outward ? "outward" : "inward") + " past " + past;
}

/// Barriers that found no partner in the alignment of a place: changed where the two stand in the same gap.
struct LooseBarriers {
    std::vector<std::size_t> before, after;
};

void compareBarriers(const Place& a, const Place& b, const Alignment& pairs, LooseBarriers loose, Lines& lines) {
    const auto gapOf = [&](std::size_t index, bool first) {
        std::size_t gap = 0;
        for (const auto& [i, j] : pairs) gap += (first ? i : j) < index ? 1U : 0U;
        return gap;
    };
    std::erase_if(loose.before, [&](std::size_t i) {
        const Barrier& was = *a.order[i].barrier();
        const auto same = [&](std::size_t j) { return *b.order[j].barrier() == was; };
        const auto near = [&](std::size_t j) { return gapOf(j, false) == gapOf(i, true); };
        auto to = std::find_if(loose.after.begin(), loose.after.end(), same);
        if (to != loose.after.end()) {
            lines.push_back("barrier " + plyWords(was.ply) + " moved " + whereWords(b, *to));
        } else {
            to = std::find_if(loose.after.begin(), loose.after.end(), near);
            if (to == loose.after.end()) return false;
            compare("barrier " + whereWords(b, *to), description(was), description(*b.order[*to].barrier()), lines);
        }
        loose.after.erase(to);
        return true;
    });
    for (const std::size_t i : loose.before)
        lines.push_back("barrier " + plyWords(a.order[i].barrier()->ply) + " " + whereWords(a, i) + " removed");
    for (const std::size_t j : loose.after)
        lines.push_back("barrier " + plyWords(b.order[j].barrier()->ply) + " added " + whereWords(b, j));
}

void comparePlace(const Place& a, const Place& b, Lines& lines) {
    const auto same = [&](std::size_t i, std::size_t j) {
        const Item &x = a.order[i], &y = b.order[j];
        return x.barrier() ? y.barrier() && *x.barrier() == *y.barrier() : identity(x) == identity(y);
    };
    // Shields hold their ground before sections, and any barrier gives way to both.
    const auto weight = [&](std::size_t i) {
        return a.order[i].shield() ? 1001.0 : a.order[i].section() ? 1000.0 : 1.0;
    };
    const Alignment pairs = alignment(a.order.size(), b.order.size(), same, weight);
    LooseBarriers loose;
    for (std::size_t i = 0; i < a.order.size(); ++i) {
        if (std::any_of(pairs.begin(), pairs.end(), [&](const auto& p) { return p.first == i; })) continue;
        if (a.order[i].barrier()) {
            loose.before.push_back(i);
        } else if (const auto to = position(b, identity(a.order[i])); to >= 0) {
            const std::string words = movedWords(a, b, called(a.order[i]), static_cast<std::ptrdiff_t>(i), to);
            if (!words.empty()) lines.push_back(words);
        }
    }
    for (std::size_t j = 0; j < b.order.size(); ++j)
        if (b.order[j].barrier() &&
            std::none_of(pairs.begin(), pairs.end(), [&](const auto& p) { return p.second == j; }))
            loose.after.push_back(j);
    compareBarriers(a, b, pairs, loose, lines);
}

const Place* placeLike(const Design& d, const Place& like) {
    const auto it = std::find_if(d.coil.begin(), d.coil.end(), [&](const Place& p) { return samePlace(p, like); });
    return it == d.coil.end() ? nullptr : &*it;
}

}  // namespace

void compareCoils(const Design& a, const Design& b, Lines& lines) {
    compareNamed(a, b, lines);
    const Place empty;
    for (const Place& place : a.coil) {
        const Place* now = placeLike(b, place);
        comparePlace(place, now ? *now : empty, lines);
        if (!now) lines.push_back(placeWords(place) + " removed");
    }
    for (const Place& place : b.coil) {
        if (placeLike(a, place)) continue;
        lines.push_back(placeWords(place) + " added");
        comparePlace(empty, place, lines);
    }
}

}  // namespace design
