// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/place_in_window.h"

#include <algorithm>

#include "coil/mean_turn.h"

namespace field {

bool bothLegsUsed(const coil::CoilBuild& build) {
    const auto on = [&](int leg) {
        return std::any_of(build.layers.begin(), build.layers.end(), [&](const auto& l) { return l.leg == leg; });
    };
    return on(1) && on(2);
}

Window windowAround(const coil::CoilBuild& build) {
    Window window{build.windowWidth, build.windowHeight};
    for (const auto& layer : build.layers) window.width = std::max(window.width, layer.box.x1);
    return window;
}

std::vector<CurrentBox> boxesInWindow(const coil::CoilBuild& build) {
    const double width = windowAround(build).width;
    const bool mirror = bothLegsUsed(build);
    std::vector<CurrentBox> boxes;
    for (const auto& layer : build.layers) {
        coil::Box box = layer.box;
        if (mirror && layer.leg == 2) {
            box.x0 = width - layer.box.x1;
            box.x1 = width - layer.box.x0;
        }
        boxes.push_back({box, layer.turns});
    }
    return boxes;
}

Perimeter perimeterOf(const coil::CoilBuild& build) {
    const double wall = build.bobbinWall + build.clearance;
    const auto at = [&](double x) { return coil::turnLength(build.tongue, build.stack, wall, build.cornerRadius, x); };
    const double slope = at(wall + 1) - at(wall);
    return {at(wall) - slope * wall, slope, bothLegsUsed(build) ? windowAround(build).width / 2 : 0};
}

}  // namespace field
