// SPDX-License-Identifier: GPL-3.0-or-later
// What holds and houses a unit: frame, can, clip, cup, clamp, bolt.
#pragma once

#include <string>

#include "catalog/parts.h"

namespace catalog {

enum class FittingForm { Frame, Can, Clip, Cup, Clamp, Bolt };
constexpr std::array<std::pair<const char*, FittingForm>, 6> names(FittingForm) {
    return {{{"frame", FittingForm::Frame},
             {"can", FittingForm::Can},
             {"clip", FittingForm::Clip},
             {"cup", FittingForm::Cup},
             {"clamp", FittingForm::Clamp},
             {"bolt", FittingForm::Bolt}}};
}

/// What a fitting's own metal goes all the way round when it is in place.
enum class Round { Nothing, Tongue, OuterLeg, Yoke };
constexpr std::array<std::pair<const char*, Round>, 4> names(Round) {
    return {{{"nothing", Round::Nothing},
             {"tongue", Round::Tongue},
             {"outer-leg", Round::OuterLeg},
             {"yoke", Round::Yoke}}};
}

/// A fitting. Sizes are over all, in m: x across the legs, y along the tongue, z square to the sheets; of a bolt its
/// head, its head, and its length.
struct Fitting {
    std::string title;
    FittingForm form = FittingForm::Frame;
    std::string material;      ///< for people: "steel, zinc plated"
    units::Datum resistivity;  ///< ohm m; 0: it insulates
    units::Datum width;        ///< in x
    units::Datum length;       ///< in y
    units::Datum height;       ///< in z
    units::Datum thickness;    ///< of its sheet or wall, m; of a bolt the shank's diameter
    units::Datum strip;        ///< width of the strip that it is bent from, m; 0: it is not of strip
    Round round = Round::Nothing;
    units::Datum mass;         ///< of one, with its screws, kg
    std::string fits;          ///< key of the sheet it is made for; "" any
    units::Datum stackHeight;  ///< highest stack that goes in, m; 0: any
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Fitting&) const = default;
    [[nodiscard]] bool conducts() const noexcept { return resistivity > 0; }
    /// A can or cup: the unit stands inside it.
    [[nodiscard]] bool houses() const noexcept { return form == FittingForm::Can || form == FittingForm::Cup; }
};
template <class Visitor>
void fields(Visitor& visit, Fitting& f) {
    const auto size = json::aboveUpTo(0, 0.5).in("m");
    visit.may("title", f.title);
    visit.need("form", f.form);
    visit.may("material", f.material);
    visit.may("resistivity", f.resistivity, json::within(0, 1e-3).in("ohm m"));
    visit.need("width", f.width, size);
    visit.need("length", f.length, size);
    visit.need("height", f.height, size);
    visit.need("thickness", f.thickness, json::aboveUpTo(0, 0.05).in("m"));
    visit.may("strip", f.strip, json::within(0, 0.5).in("m"));
    visit.may("round", f.round);
    visit.may("mass", f.mass, json::within(0, 10).in("kg"));
    visit.may("fits", f.fits);
    visit.may("stack_height", f.stackHeight, json::within(0, 0.5).in("m"));
    visit.may("standing", f.standing);
    visit.may("note", f.note);
}

}  // namespace catalog
