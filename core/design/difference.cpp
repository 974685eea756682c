// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/difference.h"

#include <algorithm>

#include "design/coil_difference.h"
#include "design/description.h"

namespace design {

namespace {

using Lines = std::vector<std::string>;

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
    return text.empty() ? "none" : text;
}

Description words(const Terminal& t) {
    return description(t);
}
Description words(const Port& p) {
    return description(p);
}
Description words(const Winding& w) {
    Winding rest = w;
    rest.order.clear();
    Description lines = description(rest);
    lines.emplace_back("order", w.order.empty() ? "as wound" : joined(w.order, ", "));
    return lines;
}
Description words(const HookUp& h) {
    HookUp rest = h;
    rest.straps.clear();
    rest.earths.clear();
    rest.ports.clear();
    Description lines = description(rest);
    std::vector<std::string> straps;
    for (const auto& strap : h.straps) straps.push_back(joined(strap, " with "));
    lines.emplace_back("straps", joined(straps, "; "));
    lines.emplace_back("earths", joined(h.earths, ", "));
    for (const PortUse& use : h.ports)
        for (const auto& [what, value] : description(use)) lines.emplace_back("port " + use.port + " " + what, value);
    return lines;
}

/// Compares two lists of things with names: added, removed, changed, listed otherwise.
template <class Thing>
void compareNamed(const std::string& what, const std::vector<Thing>& a, const std::vector<Thing>& b, Lines& lines) {
    const auto find = [](const std::vector<Thing>& list, const std::string& name) {
        return std::find_if(list.begin(), list.end(), [&](const Thing& t) { return t.name == name; });
    };
    std::vector<std::string> before, after;
    for (const Thing& thing : a) {
        const auto now = find(b, thing.name);
        if (now == b.end()) {
            lines.push_back(what + " " + thing.name + " removed");
            continue;
        }
        before.push_back(thing.name);
        compare(what + " " + thing.name, words(thing), words(*now), lines);
    }
    for (const Thing& thing : b) {
        if (find(a, thing.name) == a.end())
            lines.push_back(what + " " + thing.name + " added");
        else
            after.push_back(thing.name);
    }
    if (before != after) lines.push_back(what + "s in another order: " + joined(after, ", "));
}

template <class Part>
void compareParts(const std::map<std::string, Part>& a, const std::map<std::string, Part>& b, Lines& lines) {
    for (const auto& [key, entry] : a)
        if (const auto now = b.find(key); now != b.end())
            compare("copy of " + key, description(entry), description(now->second), lines);
}

/// The fields that stand directly in the design.
Description head(const Design& d) {
    Description lines{{"name", d.name}, {"part number", d.partNumber}, {"revision", d.revision}, {"note", d.note}};
    for (auto& [what, value] : lines)
        if (value.empty()) value = "none";
    if (d.extra.is_object())
        for (const auto& [key, value] : d.extra.items()) lines.emplace_back(pointerWords("/" + key), valueWords(value));
    return lines;
}

Description bobbinWords(const Design& d) {
    Describe all;
    auto ref = d.bobbin;
    all("/bobbin", ref, {});
    return std::move(all.out);
}

/// "fitting 1": "frame-EI48, 1 of it".
Description fittingWords(const Design& d) {
    Description lines;
    for (std::size_t k = 0; k < d.fittings.size(); ++k)
        for (const auto& [what, value] : description(d.fittings[k]))
            lines.emplace_back("fitting " + std::to_string(k + 1) + (what == "fitting" ? "" : " " + what), value);
    return lines;
}

}  // namespace

std::vector<std::string> differences(const Design& a, const Design& b) {
    Lines lines;
    compare("", head(a), head(b), lines);
    compare("brief", description(a.brief), description(b.brief), lines);
    compare("core", description(a.core), description(b.core), lines);
    compare("", bobbinWords(a), bobbinWords(b), lines);
    compareNamed("terminal", a.terminals, b.terminals, lines);
    compareNamed("winding", a.windings, b.windings, lines);
    compareCoils(a, b, lines);
    const auto filling = [](const Design& d) { return d.filling ? description(*d.filling) : Description{}; };
    compare("filling", filling(a), filling(b), lines);
    compare("", fittingWords(a), fittingWords(b), lines);
    compare("", description(a.sundries), description(b.sundries), lines);
    compareNamed("port", a.ports, b.ports, lines);
    compareNamed("hook-up", a.hookUps, b.hookUps, lines);
    compare("", description(a.conditions), description(b.conditions), lines);
    compare("assumption", description(a.assumptions), description(b.assumptions), lines);
    compareParts(a.parts.sheets, b.parts.sheets, lines);
    compareParts(a.parts.alloys, b.parts.alloys, lines);
    compareParts(a.parts.wires, b.parts.wires, lines);
    compareParts(a.parts.bobbins, b.parts.bobbins, lines);
    compareParts(a.parts.insulation, b.parts.insulation, lines);
    compareParts(a.parts.fittings, b.parts.fittings, lines);
    compareParts(a.parts.sundries, b.parts.sundries, lines);
    return lines;
}

}  // namespace design
