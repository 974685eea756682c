// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "spread/quantities.h"
#include "spread/varying.h"
#include "units/joined.h"

namespace spread {

using design::Design;
using units::joined;

/// How a value gets to its place.
struct UnitDesign::Place {
    units::Quantity* quantity = nullptr;
    json::Allowed allowed;
    units::Datum* datum = nullptr;
    catalog::Wire* wire = nullptr;    ///< whose bare diameter or enamel it is
    double bare = 0, enamelling = 0;  ///< the wire's nominals
    bool enamel = false;
};

UnitDesign::UnitDesign(const Variation& variation)
    : variation_(variation), design_(std::make_unique<Design>(*variation.base)) {
    const Quantities quantities = quantitiesOf(*design_);
    auto& parts = design_->parts;
    places_.resize(variation.all.size());
    for (std::size_t k = 0; k < places_.size(); ++k) {
        const std::string& at = variation.all[k].place;
        Place& place = places_[k];
        if (const auto it = quantities.found.find(at); it != quantities.found.end()) {
            place.quantity = it->second.quantity;
            place.allowed = it->second.allowed;
        }
        for (auto& [key, wire] : parts.wires) {
            const std::string own = "/parts/wires/" + key;
            if (at == own + "/bare_diameter" || at == own + "/overall_diameter") {
                place.wire = &wire;
                place.bare = wire.bareDiameter;
                place.enamelling = wire.overallDiameter - wire.bareDiameter;
            }
            place.enamel = place.enamel || at == own + "/overall_diameter";
            if (at == own + "/enamel_permittivity") place.datum = &wire.enamelPermittivity;
        }
        for (auto& [key, material] : parts.insulation)
            if (at == joined({"/parts/insulation/", key, "/permittivity"})) place.datum = &material.permittivity;
    }
}

UnitDesign::~UnitDesign() = default;

const Design& UnitDesign::with(const std::vector<double>& values) {
    // Wires last: the overall diameter is bare and enamel together.
    std::map<catalog::Wire*, std::pair<double, double>> diameters;
    for (std::size_t k = 0; k < places_.size(); ++k) {
        const Place& place = places_[k];
        if (place.quantity != nullptr) {
            const double least = place.allowed.openLow ? place.allowed.low + 1e-12 : place.allowed.low;
            place.quantity->value = std::clamp(values[k], least, place.allowed.high);
        } else if (place.datum != nullptr) {
            place.datum->value = std::max(1.0, values[k]);  // permittivities
        } else if (place.wire != nullptr) {
            auto& [bare, enamel] = diameters.try_emplace(place.wire, place.bare, place.enamelling).first->second;
            (place.enamel ? enamel : bare) = std::max(0.0, values[k]);
        }
    }
    for (const auto& [wire, diameter] : diameters) {
        wire->bareDiameter.value = diameter.first;
        wire->overallDiameter.value = diameter.first + diameter.second;
    }
    return *design_;
}

const Design& UnitDesign::deviating(const std::vector<double>& deviates) {
    std::vector<double> values(deviates.size());
    for (std::size_t k = 0; k < values.size(); ++k)
        values[k] = variation_.all[k].law.value(variation_.all[k].nominal, deviates[k]);
    return with(values);
}

}  // namespace spread
