// SPDX-License-Identifier: GPL-3.0-or-later
// A stamped lamination sheet: its outline, and the magnetic path that follows from it.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"

namespace catalog {

/// How the sheet is cut. EI and M have a tongue between two windows (shell); UI has two legs and one window.
enum class SheetCut { EI, M, UI };
constexpr std::array<std::pair<const char*, SheetCut>, 3> names(SheetCut) {
    return {{{"EI", SheetCut::EI}, {"M", SheetCut::M}, {"UI", SheetCut::UI}}};
}

/// Outline of one lamination, all in m. Seen square on: x across the legs, y along the tongue.
struct Sheet {
    std::string title;  ///< for people: "EI 48, scrapless"
    SheetCut cut = SheetCut::EI;
    units::Datum tongue;              ///< width of the centre leg (UI: of the leg that carries a coil)
    units::Datum windowWidth;         ///< from tongue to outer leg (UI: from leg to leg)
    units::Datum windowHeight;        ///< along the tongue
    units::Datum outerLeg;            ///< width of an outer leg
    units::Datum yoke;                ///< width of the yokes
    units::Datum pathLength;          ///< mean magnetic path, m; 0: by the mid-line rule of `pathLength(sheet)`
    std::vector<double> thicknesses;  ///< stock thicknesses, m
    std::string thicknessSource;
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Sheet&) const = default;
};

template <class Visitor>
void fields(Visitor& visit, Sheet& s) {
    const auto length = json::aboveUpTo(0, 0.5).in("m");
    visit.may("title", s.title);
    visit.may("cut", s.cut);
    visit.need("tongue", s.tongue, length);
    visit.need("window_width", s.windowWidth, length);
    visit.need("window_height", s.windowHeight, length);
    visit.need("outer_leg", s.outerLeg, length);
    visit.need("yoke", s.yoke, length);
    visit.may("path_length", s.pathLength, json::within(0, 5).in("m"));
    visit.may("thicknesses", s.thicknesses, json::aboveUpTo(0, 0.002).in("m"));
    visit.may("thickness_source", s.thicknessSource);
    visit.may("standing", s.standing);
    visit.may("note", s.note);
}

/// Mean magnetic path length, m: the sheet's own figure if it has one, else the mid-line rule.
/// EI: lm = 2 (E + F + G) with legs and yokes E/2, in general 2 (windowHeight + yoke) + 2 (windowWidth + tongue/4 +
/// outerLeg/2); the same expression is the M rule lm = 2 (e + c) + 2 (w + f/4 + c/2); UI: 2 (h + yoke) + 2 (w + (leg +
/// outerLeg)/2). Source: geometry (check rows L-EI*, L-M*, L-UI30). Flux taken as uniform over the section; corners
/// shorten it 1-3 %.
[[nodiscard]] double pathLength(const Sheet& sheet) noexcept;

/// Overall width and height of the assembled sheet, m.
[[nodiscard]] double overallWidth(const Sheet& sheet) noexcept;
[[nodiscard]] double overallHeight(const Sheet& sheet) noexcept;
/// Area of one window, m2.
[[nodiscard]] double windowArea(const Sheet& sheet) noexcept;

}  // namespace catalog
