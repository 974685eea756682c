// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/leg_against_leg.h"

#include <algorithm>

#include "field/beside_legs.h"
#include "field/image_potential.h"
#include "field/yoke_to_yoke.h"

namespace field {
namespace {

/// The layers of a leg as one coil of even current density.
struct LegCoil {
    std::vector<coil::Box> boxes;
    std::vector<double> share;
    double length = 0;  ///< mean turn beyond the window, m
};

LegCoil coilOn(int leg, const coil::CoilBuild& build, double within) {
    LegCoil coil;
    double area = 0;
    for (const auto& layer : build.layers) {
        if (layer.leg != leg) continue;
        coil.boxes.push_back(layer.box);
        coil.share.push_back(layer.box.width() * layer.box.height());
        area += coil.share.back();
        coil.length += coil.share.back() * std::max(0.0, layer.turnLength - within);
    }
    for (double& s : coil.share) s /= area;
    coil.length /= area;
    return coil;
}

}  // namespace

LegAgainstLeg legAgainstLeg(const coil::CoilBuild& build, double within, double unit) {
    const double h = build.windowHeight, yoke = build.yoke > 0 ? build.yoke : build.tongue;
    const double across = build.tongue + build.windowWidth + (build.outerLeg > 0 ? build.outerLeg : build.tongue);
    const std::vector<coil::Box> thin{{0, 1e-4 * h, 0, h}};
    const double thinOwn = imageMatrix(thin, unit)(0, 0);
    LegAgainstLeg result;
    result.inSpace =
        yokeToYoke({build.tongue, yoke, build.windowWidth, h, build.stack}) - build.stack * build.windowWidth / h;
    for (const int leg : {1, 2}) {
        const LegCoil coil = coilOn(leg, build, within);
        if (coil.length <= 0) continue;
        const auto more = [&](double width) {
            const IronBlock block{width, -yoke, h + yoke};
            return aroundBlock(block, coil.boxes, coil.share, unit) - aroundBlock(block, thin, {1}, unit) - thinOwn;
        };
        const double side = std::min(1.0, build.stack / coil.length);
        result.perMetre[static_cast<std::size_t>(leg - 1)] = side * more(across) + (1 - side) * more(build.stack);
    }
    return result;
}

}  // namespace field
