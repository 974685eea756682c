// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/varying.h"

#include <algorithm>
#include <cmath>

#include "coil/winding_steps.h"
#include "design/edit.h"
#include "json/enum_word.h"
#include "spread/quantities.h"
#include "units/joined.h"
#include "units/text.h"

namespace spread {

using design::Design;
using units::joined;

namespace {

/// Gives every entry that stands in the design itself a key among its stored parts; the same entry one key.
struct KeyedParts {
    catalog::Catalog& parts;
    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) {}
    template <class Part>
    void operator()(const std::string& at, catalog::PartRef<Part>& ref, const json::Allowed&) {
        if (!ref.own) return;
        auto& shelf = shelfFor(*ref.own);
        std::string key = "of " + at;
        for (const auto& [known, entry] : shelf)
            if (known.starts_with("of /") && entry == *ref.own) key = known;
        shelf.emplace(key, *ref.own);
        ref = catalog::PartRef<Part>(key);
    }
    auto& shelfFor(const catalog::Sheet&) { return parts.sheets; }
    auto& shelfFor(const catalog::Alloy&) { return parts.alloys; }
    auto& shelfFor(const catalog::Wire&) { return parts.wires; }
    auto& shelfFor(const catalog::Bobbin&) { return parts.bobbins; }
    auto& shelfFor(const catalog::Insulation&) { return parts.insulation; }
    auto& shelfFor(const catalog::Fitting&) { return parts.fittings; }
    auto& shelfFor(const catalog::Sundry&) { return parts.sundries; }
};

/// Turns a layer of a section as it is laid out; 0 where it has no layers of its own.
int turnsPerLayer(const design::Section& section, const design::Place& place, const Design& design,
                  const coil::CoilBuild& build) {
    const auto* bobbin = design::part(design, design.bobbin, {});
    const auto at = std::find_if(build.layers.begin(), build.layers.end(), [&](const coil::Layer& l) {
        return l.winding == section.winding && l.section == section.name;
    });
    if (bobbin == nullptr || at == build.layers.end() || at->conductor.foil || at->pitch <= 0) return 0;
    const auto& chamber = bobbin->chambers[static_cast<std::size_t>(place.chamber - 1)];
    const double room = chamber.high - chamber.low - section.marginLow - section.marginHigh;
    const int laid = static_cast<int>(std::lround(room / at->pitch));
    if (!section.hand.empty()) return laid;
    return std::max(laid,
                    coil::turnsThatFit(room, at->conductor.overall * at->conductor.strands * section.pitchFactor));
}

design::DesignPtr baseOf(const Design& nominal, const catalog::Catalog& shop, const coil::CoilBuild& build) {
    const auto stored = design::withStoredParts(nominal, shop);
    return design::changed(*stored, [&](Design& d) {
        KeyedParts keyed{d.parts};
        design::Walk<KeyedParts>("", keyed).step("", d, {});
        for (auto& place : d.coil)
            for (auto& item : place.order)
                if (auto* section = item.section();
                    section != nullptr && section->lay != design::Lay::Random && section->turnsPerLayer == 0)
                    section->turnsPerLayer = turnsPerLayer(*section, place, d, build);
    });
}

/// Collects what varies, shop's tolerances first.
class Collector {
public:
    Collector(Design& design, const catalog::Tolerances& tolerances)
        : design_(design), tolerances_(tolerances), quantities_(quantitiesOf(design)) {}

    std::vector<Varying> collect() {
        addWires();
        addInsulation();
        addCoil();
        addCore();
        addHookUps();
        add("temperature", "/conditions/temperature", "temperature", design_.conditions.temperature, "temperature");
        takeOwn();
        std::erase_if(all_, [](const Varying& v) { return !(v.law.deviation(v.nominal) > 0); });
        return std::move(all_);
    }

private:
    Law lawOf(const catalog::ShopTolerance& t, double nominal) const {
        Law law{t.law, t.plusMinus, t.relative, {}};
        if (t.law == catalog::Law::Discrete) law.steps = wholeSteps(t.steps);
        for (auto it = t.widths.rbegin(); it != t.widths.rend(); ++it)
            if (nominal <= it->upTo) {
                law.halfWidth = it->plusMinus;
                law.relative = false;
            }
        return law;
    }
    Varying* add(const char* key, const std::string& place, std::string name, double nominal, std::string lot) {
        const auto it = tolerances_.find(key);
        if (it == tolerances_.end()) return nullptr;
        const auto& t = it->second;
        all_.push_back({std::move(name), place, nominal, lawOf(t, nominal), t.lotShare, std::move(lot), t.source,
                        json::wordOf(t.status)});
        return &all_.back();
    }

    void addWires() {
        for (const auto& [key, wire] : design_.parts.wires) {
            const std::string at = "/parts/wires/" + key, of = " of wire " + key;
            add("wire_diameter", at + "/bare_diameter", "bare diameter" + of, wire.bareDiameter, "wire " + key);
            const double enamel = wire.overallDiameter - wire.bareDiameter;
            auto* v = add("wire_enamel", at + "/overall_diameter", "enamel" + of, enamel, "enamel " + key);
            if (v != nullptr && wire.overallMinimum > 0 && wire.overallMaximum > wire.overallMinimum) {
                // Half of what lies between the limits, which are of both, less the bare diameter's own part.
                const double both = (wire.overallMaximum - wire.overallMinimum) / 2;
                const double bare = (all_.end() - 2)->law.deviation(wire.bareDiameter) * 2;
                v->law.halfWidth = std::sqrt(std::max(both * both - bare * bare, 0.01 * both * both));
                v->law.relative = false;
                v->source = "least and greatest overall diameter: " + wire.overallMaximum.source;
            }
            add("permittivity", at + "/enamel_permittivity", "permittivity of enamel" + of, wire.enamelPermittivity,
                "enamel permittivity " + key);
        }
        for (std::size_t w = 0; w < design_.windings.size(); ++w)
            add("wire_stretch", joined({"/windings/", std::to_string(w), "/resistance_factor"}),
                "stretch of winding " + design_.windings[w].name, design_.windings[w].resistanceFactor,
                "stretch " + design_.windings[w].name);
    }
    void addInsulation() {
        for (const auto& [key, material] : design_.parts.insulation) {
            const bool filling = design_.filling && design_.filling->compound.key == key;
            if (filling && !design_.conditions.filled) continue;
            add("permittivity", joined({"/parts/insulation/", key, "/permittivity"}), "permittivity of " + key,
                material.permittivity, "permittivity " + key);
        }
    }
    void addPly(const std::string& at, const design::Ply& ply, const std::string& where) {
        if (ply.thickness > 0)
            add("sheet_thickness", at + "/thickness", "thickness of " + where, ply.thickness,
                joined({"sheet ", ply.insulation.key, " ", units::shortest(ply.thickness)}));
    }
    void addCoil() {
        for (std::size_t p = 0; p < design_.coil.size(); ++p)
            for (std::size_t i = 0; i < design_.coil[p].order.size(); ++i) {
                const auto& item = design_.coil[p].order[i];
                const std::string at = joined({"/coil/", std::to_string(p), "/order/", std::to_string(i)});
                if (const auto* barrier = item.barrier())
                    addPly(at + "/barrier", barrier->ply,
                           joined({"barrier ", std::to_string(i + 1), " of place ", std::to_string(p + 1)}));
                if (const auto* section = item.section()) addSection(at + "/section", *section);
            }
    }
    void addSection(const std::string& at, const design::Section& section) {
        if (section.interlayer) addPly(at + "/interlayer", *section.interlayer, "interlayers of " + section.label());
        const auto* winding = design::winding(design_, section.winding);
        if (winding == nullptr || winding->foil) return;
        add("tightness", at + "/layer_factor", "tightness of " + section.label(), section.layerFactor, "tightness");
        add("turns_mistakes", at + "/turns", "turns of " + section.label(), section.turns, "");
    }
    void addCore() {
        const auto& core = design_.core;
        add("stack_height", "/core/height", "stack height", core.height, "stack height");
        add("stacking", "/core/stacking_factor", "metal share of the stack", core.stackingFactor, "stacking");
        for (std::size_t k = 0; k < core.stack.size(); ++k)
            if (core.stack[k].share > 0)
                add("permeability", joined({"/core/stack/", std::to_string(k), "/permeability_factor"}),
                    "permeability of " + core.stack[k].alloy.key, core.stack[k].permeabilityFactor,
                    "sheet " + core.stack[k].alloy.key);
        if (core.gap > 0) add("joint_gap", "/core/gap", "joint gap", core.gap, "joint gap");
    }
    void addHookUps() {
        for (std::size_t h = 0; h < design_.hookUps.size(); ++h)
            for (std::size_t p = 0; p < design_.hookUps[h].ports.size(); ++p) {
                const auto& use = design_.hookUps[h].ports[p];
                const std::string at = joined({"/hook_ups/", std::to_string(h), "/ports/", std::to_string(p)});
                const std::string of = joined({" at ", use.port, " (", design_.hookUps[h].name, ")"});
                if (use.through && use.through->resistance > 0)
                    add(use.role == design::Role::Drive ? "source_impedance" : "load_impedance",
                        at + "/through/resistance", (use.role == design::Role::Drive ? "source" : "load") + of,
                        use.through->resistance, "");
                for (std::size_t k = 0; k < use.across.size(); ++k)
                    if (use.across[k].capacitance > 0)
                        add("load_capacitance", joined({at, "/across/", std::to_string(k), "/capacitance"}),
                            "capacitance" + of, use.across[k].capacitance, "");
            }
    }
    /// What the design itself says of its quantities.
    void takeOwn() {
        for (const auto& one : quantities_.found) {
            const std::string& at = one.first;
            const QuantityAt& place = one.second;
            if (!place.quantity->tolerance) continue;
            const auto known = std::find_if(all_.begin(), all_.end(), [&](const Varying& v) { return v.place == at; });
            Varying own = known != all_.end() ? *known : Varying{at, at, *place.quantity, {}, 0, "", "", ""};
            own.law = lawOf(*place.quantity->tolerance);
            own.source = "this design";
            own.status = "this design";
            if (known != all_.end())
                *known = own;
            else
                all_.push_back(own);
        }
    }
    static Law lawOf(const units::Tolerance& t) {
        Law law{catalog::Law::Normal, t.plusMinus, t.relative, {}};
        for (const auto& [word, kind] : names(catalog::Law{}))
            if (t.distribution == word && kind != catalog::Law::Discrete) law.kind = kind;
        return law;
    }

    Design& design_;
    const catalog::Tolerances& tolerances_;
    Quantities quantities_;
    std::vector<Varying> all_;
};

}  // namespace

std::vector<double> nominals(const Variation& variation) {
    std::vector<double> all;
    all.reserve(variation.all.size());
    for (const auto& one : variation.all) all.push_back(one.nominal);
    return all;
}

Variation variationOf(const Design& nominal, const catalog::Catalog& shop, const catalog::Tolerances& tolerances) {
    Variation variation;
    variation.base = baseOf(nominal, shop, coil::layOut(nominal, shop));
    Design copy = *variation.base;
    variation.all = Collector(copy, tolerances).collect();
    return variation;
}

}  // namespace spread
