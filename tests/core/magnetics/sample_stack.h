// SPDX-License-Identifier: GPL-3.0-or-later
// A design with nothing but a core, and the alloys to put in it.
#pragma once

#include <initializer_list>
#include <memory>
#include <utility>

#include "design/design.h"

namespace sample {

inline catalog::Catalog shop() {
    catalog::Catalog all;
    catalog::Sheet sheet;
    sheet.tongue = 16e-3;
    sheet.windowWidth = 8e-3;
    sheet.windowHeight = 24e-3;
    sheet.outerLeg = 8e-3;
    sheet.yoke = 8e-3;
    all.sheets["ei48"] = sheet;
    catalog::Sheet legs = sheet;
    legs.cut = catalog::SheetCut::UI;
    legs.tongue = 10e-3;
    legs.windowWidth = 10e-3;
    legs.windowHeight = 30e-3;
    legs.outerLeg = 10e-3;
    legs.yoke = 10e-3;
    all.sheets["ui30"] = legs;
    catalog::Alloy alloy;
    alloy.title = "80 % nickel";
    alloy.initialPermeability = 60000;
    alloy.saturation = 0.75;
    alloy.resistivity = 58e-8;
    alloy.rayleigh = 160000;
    all.alloys["nickel-80"] = alloy;
    alloy.title = "50 % nickel";
    alloy.initialPermeability = 6000;
    alloy.saturation = 1.5;
    alloy.resistivity = 48e-8;
    alloy.rayleigh = 16000;
    all.alloys["nickel-50"] = alloy;
    alloy.title = "silicon steel with a curve";
    alloy.initialPermeability = 500;
    alloy.saturation = 1.97;
    alloy.resistivity = 60e-8;
    alloy.rayleigh = 160;
    alloy.curve = {{0, 0},       {1.4, 0.00127}, {6.6, 0.0131}, {31, 0.204},    {68, 0.595},   {172, 1.047},
                   {440, 1.321}, {1120, 1.474},  {4600, 1.65},  {18700, 1.843}, {76000, 2.018}};
    all.alloys["silicon"] = alloy;
    return all;
}

/// A square stack on the shell sheet of alloys with their shares.
inline design::Design core(std::initializer_list<std::pair<const char*, double>> stack) {
    design::Design design;
    design.core.sheet = "ei48";
    design.core.height = 16e-3;
    design.core.stackingFactor = 0.9;
    design.core.gap = 5e-6;
    for (const auto& [alloy, share] : stack) {
        design::StackPart part;
        part.alloy = alloy;
        part.share = share;
        design.core.stack.push_back(part);
    }
    return design;
}

}  // namespace sample
