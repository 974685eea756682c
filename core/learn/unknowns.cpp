// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/unknowns.h"

#include <algorithm>
#include <cmath>

#include "design/edit.h"
#include "spread/quantities.h"
#include "units/joined.h"

namespace learn {

using units::joined;

namespace {

/// Which of the keys a varying number belongs to; "" none.
std::string keyOf(const spread::Varying& one) {
    const std::string& at = one.place;
    if (at.ends_with("/permeability_factor")) return "permeability";
    if (at == "/core/gap") return "joint_gap";
    if (at.starts_with("/coil/") && at.ends_with("/thickness")) return "sheet_thickness";
    if (at.ends_with("/permittivity") || at.ends_with("/enamel_permittivity")) return "permittivity";
    if (at.ends_with("/layer_factor")) return "tightness";
    if (at.ends_with("/resistance_factor")) return "wire_stretch";
    return {};
}

std::string wordsOf(const std::string& key, const spread::Varying& one) {
    if (key == "permeability" || key == "joint_gap") return one.name;
    if (key == "sheet_thickness") return "effective thickness of paper and film";
    if (key == "permittivity") return "permittivity of insulation and enamel";
    if (key == "tightness") return "room that layers take (tightness)";
    return "resistance of stretched wire";
}

/// The key of a stored part behind "/parts/insulation/", and what stands there.
std::string partKey(const std::string& place, const std::string& front) {
    const auto last = place.rfind('/');
    return place.starts_with(front) && last > front.size() ? place.substr(front.size(), last - front.size()) : "";
}

bool scaleDatum(units::Datum& datum, double factor) {
    datum.value = std::max(1.0, datum.value * factor);
    datum.source = joined({"fitted to measured readings; before: ", datum.source.empty() ? "no source" : datum.source});
    return true;
}

bool scalePart(design::Design& d, const std::string& place, double factor) {
    if (const auto at = d.parts.insulation.find(partKey(place, "/parts/insulation/")); at != d.parts.insulation.end())
        return scaleDatum(at->second.permittivity, factor);
    if (const auto at = d.parts.wires.find(partKey(place, "/parts/wires/")); at != d.parts.wires.end())
        return scaleDatum(at->second.enamelPermittivity, factor);
    return false;
}

}  // namespace

std::vector<Unknown> unknownsOf(const spread::Variation& variation, const std::vector<std::string>& keys) {
    constexpr double deviations = 8;
    const double least = std::log(1.2);
    std::vector<Unknown> all;
    for (const char* key : unknownKeys) {
        if (!keys.empty() && std::find(keys.begin(), keys.end(), key) == keys.end()) continue;
        for (std::size_t k = 0; k < variation.all.size(); ++k) {
            const auto& one = variation.all[k];
            if (keyOf(one) != key || !(one.nominal > 0)) continue;
            const bool own = std::string(key) == "permeability";
            const double spread = one.law.deviation(one.nominal) / one.nominal;
            const auto same = std::find_if(all.begin(), all.end(), [&](const Unknown& u) { return u.key == key; });
            if (same != all.end() && !own) {
                same->members.push_back(k);
                same->spread = std::max(same->spread, spread);
            } else {
                all.push_back({key, wordsOf(key, one), {k}, spread, 0});
            }
        }
    }
    for (auto& one : all) one.most = std::max(least, deviations * one.spread);
    return all;
}

design::DesignPtr withFactors(const design::Design& design, const catalog::Catalog& shop,
                              const spread::Variation& variation, const std::vector<Unknown>& unknowns,
                              const std::vector<double>& factors, std::vector<std::string>& left) {
    const auto stored = design::withStoredParts(design, shop);
    return design::changed(*stored, [&](design::Design& d) {
        const spread::Quantities quantities = spread::quantitiesOf(d);
        for (std::size_t u = 0; u < unknowns.size(); ++u)
            for (const std::size_t k : unknowns[u].members) {
                const auto& one = variation.all[k];
                const auto at = quantities.found.find(one.place);
                if (at != quantities.found.end()) {
                    const double least = at->second.allowed.openLow ? 1e-12 : 0;
                    at->second.quantity->value =
                        std::clamp(one.nominal * factors[u], at->second.allowed.low + least, at->second.allowed.high);
                } else if (!scalePart(d, one.place, factors[u])) {
                    left.push_back(one.name);
                }
            }
    });
}

}  // namespace learn
