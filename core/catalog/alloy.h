// SPDX-License-Identifier: GPL-3.0-or-later
// A core alloy as sheet: what it does in a small field, in a large one, and to an alternating flux.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"

namespace catalog {

enum class AlloyFamily { NickelIron80, NickelIron50, CobaltIron, SiliconOriented, SiliconNonOriented };
constexpr std::array<std::pair<const char*, AlloyFamily>, 5> names(AlloyFamily) {
    return {{{"nickel-iron-80", AlloyFamily::NickelIron80},
             {"nickel-iron-50", AlloyFamily::NickelIron50},
             {"cobalt-iron", AlloyFamily::CobaltIron},
             {"silicon-oriented", AlloyFamily::SiliconOriented},
             {"silicon-non-oriented", AlloyFamily::SiliconNonOriented}}};
}

/// One point of the anhysteretic (initial) magnetisation curve.
struct BhPoint {
    double field = 0;  ///< A/m
    double flux = 0;   ///< T
    bool operator==(const BhPoint&) const = default;
    void readSelf(const json::Value& from, const std::string& key, json::Reader& reader) {
        std::vector<double> pair;
        reader.value(from, key, pair, json::within(0, 1e7));
        if (pair.size() != 2) return reader.fault(key, &from, "[field in A/m, flux density in T]");
        field = pair[0];
        flux = pair[1];
    }
    [[nodiscard]] json::Value writeSelf() const { return json::Value::array({field, flux}); }
};

/// A core alloy. Permeabilities are relative.
struct Alloy {
    std::string title;
    AlloyFamily family = AlloyFamily::SiliconNonOriented;
    units::Datum initialPermeability;
    units::Datum maximumPermeability;
    units::Datum rayleigh;          ///< Rayleigh coefficient nu, m/A: mu = mu_i + nu H_m; 0: not known
    units::Datum saturation;        ///< T
    units::Datum remanence;         ///< T; 0: not known
    units::Datum coercivity;        ///< A/m
    units::Datum resistivity;       ///< ohm m
    units::Datum density;           ///< kg/m3
    units::Datum curieTemperature;  ///< degree Celsius; 0: not known
    std::vector<BhPoint> curve;     ///< from (0, 0), both rising
    std::string curveSource;
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Alloy&) const = default;
};

template <class Visitor>
void fields(Visitor& visit, Alloy& a) {
    visit.may("title", a.title);
    visit.may("family", a.family);
    visit.need("initial_permeability", a.initialPermeability, json::within(1, 1e6));
    visit.may("maximum_permeability", a.maximumPermeability, json::within(0, 5e6));
    visit.may("rayleigh", a.rayleigh, json::within(0, 1e9).in("m/A"));
    visit.may("saturation", a.saturation, json::within(0, 3).in("T"));
    visit.may("remanence", a.remanence, json::within(0, 3).in("T"));
    visit.may("coercivity", a.coercivity, json::within(0, 1e5).in("A/m"));
    visit.need("resistivity", a.resistivity, json::aboveUpTo(0, 1e-3).in("ohm m"));
    visit.may("density", a.density, json::within(0, 20000).in("kg/m3"));
    visit.may("curie_temperature", a.curieTemperature, json::within(0, 1500).in("degree Celsius"));
    visit.may("curve", a.curve);
    visit.may("curve_source", a.curveSource);
    visit.may("standing", a.standing);
    visit.may("note", a.note);
}

}  // namespace catalog
