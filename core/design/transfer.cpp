// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/transfer.h"

#include <algorithm>
#include <array>

#include "design/edit.h"

namespace design {

namespace {

constexpr std::array<std::pair<Share, const char*>, 15> shareWords{{{Share::Brief, "the brief"},
                                                                    {Share::Core, "the core"},
                                                                    {Share::Bobbin, "the bobbin"},
                                                                    {Share::Terminals, "the terminals"},
                                                                    {Share::Winding, "winding "},
                                                                    {Share::Section, "section "},
                                                                    {Share::Shield, "shield "},
                                                                    {Share::Coil, "the whole coil"},
                                                                    {Share::Filling, "the filling"},
                                                                    {Share::Fittings, "fittings and sundries"},
                                                                    {Share::Ports, "the ports"},
                                                                    {Share::HookUp, "hook-up "},
                                                                    {Share::Conditions, "the conditions"},
                                                                    {Share::Assumptions, "the assumptions"},
                                                                    {Share::Copies, "the copies of catalog entries"}}};

template <class Thing>
const Thing* named(const std::vector<Thing>& all, const std::string& name) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Thing& thing) { return thing.name == name; });
    return found == all.end() ? nullptr : &*found;
}

/// Names of things that only one of the two has, or that differ.
template <class Thing>
void differing(Share share, const std::vector<Thing>& into, const std::vector<Thing>& from,
               std::vector<Portion>& portions) {
    for (const Thing& thing : into)
        if (const Thing* other = named(from, thing.name); !other || *other != thing)
            portions.push_back({share, thing.name});
    for (const Thing& thing : from)
        if (!named(into, thing.name)) portions.push_back({share, thing.name});
}

template <class Thing>
void takeNamed(std::vector<Thing>& into, const std::vector<Thing>& from, const std::string& name) {
    const Thing* taken = named(from, name);
    const auto here = std::find_if(into.begin(), into.end(), [&](const Thing& thing) { return thing.name == name; });
    if (!taken && here != into.end())
        into.erase(here);
    else if (taken && here != into.end())
        *here = *taken;
    else if (taken)
        into.push_back(*taken);
}

bool means(const Item& item, const Portion& portion) {
    if (const Section* section = item.section())
        return portion.share == Share::Section && section->label() == portion.name;
    if (const Shield* shield = item.shield()) return portion.share == Share::Shield && shield->name == portion.name;
    return false;
}

const Item* itemOf(const Design& d, const Portion& portion) {
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (means(item, portion)) return &item;
    return nullptr;
}

void differingItems(const Design& into, const Design& from, std::vector<Portion>& portions) {
    for (const Place& place : into.coil)
        for (const Item& item : place.order) {
            if (item.barrier()) continue;
            const Portion portion = item.section() ? Portion{Share::Section, item.section()->label()}
                                                   : Portion{Share::Shield, item.shield()->name};
            if (const Item* other = itemOf(from, portion); other && *other != item) portions.push_back(portion);
        }
}

/// Entries that `into` has not; with `rule`, also those that it has otherwise.
template <class Part>
void takeCopies(std::map<std::string, Part>& into, const std::map<std::string, Part>& from, bool rule) {
    for (const auto& [key, entry] : from) {
        const auto [here, fresh] = into.try_emplace(key, entry);
        if (rule && !fresh) here->second = entry;
    }
}

catalog::Catalog copies(catalog::Catalog into, const catalog::Catalog& from, bool rule) {
    takeCopies(into.sheets, from.sheets, rule);
    takeCopies(into.alloys, from.alloys, rule);
    takeCopies(into.wires, from.wires, rule);
    takeCopies(into.bobbins, from.bobbins, rule);
    takeCopies(into.insulation, from.insulation, rule);
    takeCopies(into.fittings, from.fittings, rule);
    takeCopies(into.sundries, from.sundries, rule);
    return into;
}

void takeItem(Design& d, const Design& from, const Portion& portion) {
    const Item* taken = itemOf(from, portion);
    for (Place& place : d.coil)
        for (Item& item : place.order)
            if (taken && means(item, portion)) item = *taken;
}

}  // namespace

std::string Portion::words() const {
    for (const auto& [known, text] : shareWords)
        if (known == share) return text + name;
    return name;
}

std::vector<Portion> differingPortions(const Design& into, const Design& from) {
    std::vector<Portion> portions;
    const auto whole = [&](Share share, bool same) {
        if (!same) portions.push_back({share, {}});
    };
    whole(Share::Brief, into.brief == from.brief);
    whole(Share::Core, into.core == from.core);
    whole(Share::Bobbin, into.bobbin == from.bobbin);
    whole(Share::Terminals, into.terminals == from.terminals);
    differing(Share::Winding, into.windings, from.windings, portions);
    differingItems(into, from, portions);
    whole(Share::Coil, into.coil == from.coil);
    whole(Share::Filling, into.filling == from.filling);
    whole(Share::Fittings, into.fittings == from.fittings && into.sundries == from.sundries);
    whole(Share::Ports, into.ports == from.ports);
    differing(Share::HookUp, into.hookUps, from.hookUps, portions);
    whole(Share::Conditions, into.conditions == from.conditions);
    whole(Share::Assumptions, into.assumptions == from.assumptions);
    whole(Share::Copies, copies(into.parts, from.parts, true) == copies(into.parts, from.parts, false));
    return portions;
}

DesignPtr withPortion(const Design& into, const Design& from, const Portion& portion) {
    return changed(into, [&](Design& d) {
        switch (portion.share) {
            case Share::Brief:
                d.brief = from.brief;
                break;
            case Share::Core:
                d.core = from.core;
                break;
            case Share::Bobbin:
                d.bobbin = from.bobbin;
                break;
            case Share::Terminals:
                d.terminals = from.terminals;
                break;
            case Share::Winding:
                takeNamed(d.windings, from.windings, portion.name);
                break;
            case Share::Section:
            case Share::Shield:
                takeItem(d, from, portion);
                break;
            case Share::Coil:
                d.coil = from.coil;
                break;
            case Share::Filling:
                d.filling = from.filling;
                break;
            case Share::Fittings:
                d.fittings = from.fittings;
                d.sundries = from.sundries;
                break;
            case Share::Ports:
                d.ports = from.ports;
                break;
            case Share::HookUp:
                takeNamed(d.hookUps, from.hookUps, portion.name);
                break;
            case Share::Conditions:
                d.conditions = from.conditions;
                break;
            case Share::Assumptions:
                d.assumptions = from.assumptions;
                break;
            case Share::Copies:
                break;
        }
        d.parts = copies(std::move(d.parts), from.parts, portion.share == Share::Copies);
    });
}

}  // namespace design
