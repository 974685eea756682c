// SPDX-License-Identifier: GPL-3.0-or-later
// What lies between conductors: film, paper, varnish, compound.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"

namespace catalog {

enum class InsulationForm { Film, Paper, Varnish, Compound };
constexpr std::array<std::pair<const char*, InsulationForm>, 4> names(InsulationForm) {
    return {{{"film", InsulationForm::Film},
             {"paper", InsulationForm::Paper},
             {"varnish", InsulationForm::Varnish},
             {"compound", InsulationForm::Compound}}};
}

/// An insulating material. Permittivity is relative, at about 1 kHz and 20 degrees Celsius.
struct Insulation {
    std::string title;
    InsulationForm form = InsulationForm::Film;
    units::Datum permittivity;
    units::Datum lossFactor;          ///< tan delta
    std::vector<double> thicknesses;  ///< stock thicknesses, m; empty for liquids
    std::string thicknessSource;
    units::Datum density;  ///< kg/m3; 0: not known
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Insulation&) const = default;
};

template <class Visitor>
void fields(Visitor& visit, Insulation& i) {
    visit.may("title", i.title);
    visit.may("form", i.form);
    visit.need("permittivity", i.permittivity, json::within(1, 100));
    visit.may("loss_factor", i.lossFactor, json::within(0, 1));
    visit.may("thicknesses", i.thicknesses, json::aboveUpTo(0, 0.01).in("m"));
    visit.may("thickness_source", i.thicknessSource);
    visit.may("density", i.density, json::within(0, 20000).in("kg/m3"));
    visit.may("standing", i.standing);
    visit.may("note", i.note);
}

}  // namespace catalog
