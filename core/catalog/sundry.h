// SPDX-License-Identifier: GPL-3.0-or-later
// What is bought by the metre: lead wire, sleeving, tape.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"

namespace catalog {

enum class SundryForm { Lead, Sleeving, Tape };
constexpr std::array<std::pair<const char*, SundryForm>, 3> names(SundryForm) {
    return {{{"lead", SundryForm::Lead}, {"sleeving", SundryForm::Sleeving}, {"tape", SundryForm::Tape}}};
}

/// Something that is cut off a reel.
struct Sundry {
    std::string title;
    SundryForm form = SundryForm::Lead;
    std::string material;              ///< for people: "tinned strands in PVC"
    units::Datum diameter;             ///< over all, of a lead or sleeving, m
    units::Datum bore;                 ///< of sleeving, m
    units::Datum copper;               ///< cross-section of a lead's conductor, m2
    units::Datum width;                ///< of tape, m
    units::Datum thickness;            ///< of tape with its adhesive, m
    units::Datum massPerMetre;         ///< kg/m; 0: not known
    units::Datum hottest;              ///< temperature that it stands for long, degree Celsius; 0: not known
    std::vector<std::string> colours;  ///< a lead is to be had in; empty: any
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Sundry&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Sundry& s) {
    const auto size = json::within(0, 0.05).in("m");
    visit.may("title", s.title);
    visit.need("form", s.form);
    visit.may("material", s.material);
    visit.may("diameter", s.diameter, size);
    visit.may("bore", s.bore, size);
    visit.may("copper", s.copper, json::within(0, 1e-4).in("m2"));
    visit.may("width", s.width, json::within(0, 0.5).in("m"));
    visit.may("thickness", s.thickness, size);
    visit.may("mass_per_metre", s.massPerMetre, json::within(0, 10).in("kg/m"));
    visit.may("hottest", s.hottest, json::within(0, 500).in("degree Celsius"));
    visit.may("colours", s.colours);
    visit.may("standing", s.standing);
    visit.may("note", s.note);
}

}  // namespace catalog
