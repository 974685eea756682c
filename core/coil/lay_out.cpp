// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/chamber_winder.h"
#include "coil/coil_build.h"
#include "coil/half_turns.h"
#include "coil/lead_outs.h"

namespace coil {

namespace {

void addBobbin(const catalog::Bobbin& bobbin, CoilBuild& build) {
    const double outside = bobbin.wall + bobbin.clearance;
    build.bobbinWall = bobbin.wall;
    build.clearance = bobbin.clearance;
    build.cornerRadius = bobbin.cornerRadius;
    build.bobbinPermittivity = bobbin.permittivity;
    build.bobbinLoss = bobbin.lossFactor;
    const double depth = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
    for (int leg = 1; leg <= build.legs; ++leg) {
        const auto add = [&](Box box, const char* name) {
            if (box.width() > 0 && box.height() > 0)
                build.dielectrics.push_back({box, bobbin.permittivity, bobbin.lossFactor, leg, 0, true, name});
        };
        add({bobbin.clearance, outside, 0, build.windowHeight}, "bobbin wall");
        double below = 0;
        for (const auto& chamber : bobbin.chambers) {
            add({outside, depth, below, chamber.low}, "flange");
            below = chamber.high;
        }
        add({outside, depth, below, build.windowHeight}, "flange");
    }
}

}  // namespace

CoilBuild layOut(const design::Design& design, const catalog::Catalog& shop) {
    CoilBuild build;
    const auto* sheet = design::part(design, design.core.sheet, shop);
    const auto* bobbin = design::part(design, design.bobbin, shop);
    if (sheet == nullptr || bobbin == nullptr) return build;  // `check` has said so
    build.tongue = sheet->tongue;
    build.stack = design.core.height;
    build.windowWidth = sheet->windowWidth;
    build.windowHeight = sheet->windowHeight;
    build.outerLeg = sheet->outerLeg;
    build.yoke = sheet->yoke;
    build.legs = design.core.kind == design::CoreKind::TwoLeg ? 2 : 1;
    addBobbin(*bobbin, build);
    if (design.conditions.filled && design.filling)
        if (const auto* compound = design::part(design, design.filling->compound, shop)) {
            build.fillPermittivity = compound->permittivity;
            build.fillLoss = compound->lossFactor;
        }
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        const auto& place = design.coil[p];
        const auto chamber = static_cast<std::size_t>(place.chamber - 1);
        if (chamber >= bobbin->chambers.size()) continue;
        const double depth = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
        ChamberWinder(design, shop, build, static_cast<int>(p))
            .wind({build.bobbinWall + build.clearance, depth, bobbin->chambers[chamber].low,
                   bobbin->chambers[chamber].high});
    }
    markHalfTurns(design, build);
    build.leads = leadOuts(design, shop, build);
    return build;
}

}  // namespace coil
