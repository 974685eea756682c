// SPDX-License-Identifier: GPL-3.0-or-later
// Enamelled round copper wire: bare and overall diameter, and the enamel between.
#pragma once

#include <string>

#include "catalog/parts.h"

namespace catalog {

/// Round enamelled wire. Diameters in m.
struct Wire {
    std::string title;             ///< "AWG 38, single build"
    units::Datum bareDiameter;     ///< nominal
    units::Datum overallDiameter;  ///< what to build with: middle of the standard's minimum and maximum
    units::Datum overallMinimum;   ///< 0: not known
    units::Datum overallMaximum;   ///< what must fit; 0: as `overallDiameter`
    units::Datum enamelPermittivity{3.5};
    units::Datum enamelLossFactor{0.0};  ///< tan delta
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Wire&) const = default;
};

template <class Visitor>
void fields(Visitor& visit, Wire& w) {
    const auto diameter = json::aboveUpTo(0, 0.01).in("m");
    visit.may("title", w.title);
    visit.need("bare_diameter", w.bareDiameter, diameter);
    visit.need("overall_diameter", w.overallDiameter, diameter);
    visit.may("overall_minimum", w.overallMinimum, json::within(0, 0.01).in("m"));
    visit.may("overall_maximum", w.overallMaximum, json::within(0, 0.01).in("m"));
    visit.may("enamel_permittivity", w.enamelPermittivity, json::within(1, 20));
    visit.may("enamel_loss_factor", w.enamelLossFactor, json::within(0, 1));
    visit.may("standing", w.standing);
    visit.may("note", w.note);
}

}  // namespace catalog
