// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/frame.h"

#include <algorithm>
#include <cmath>

#include "cut/section_geometry.h"

namespace cut {

double ironStrip(const coil::CoilBuild& build) noexcept {
    return std::min(build.tongue / 2, 0.16 * std::min(build.windowWidth, build.windowHeight));
}

coil::Box extent(const coil::CoilBuild& build) noexcept {
    const double strip = ironStrip(build);
    coil::Box all{-strip, build.windowWidth + strip, -strip, build.windowHeight + strip};
    const auto take = [&](const coil::Box& box) {
        all.x0 = std::min(all.x0, box.x0);
        all.x1 = std::max(all.x1, box.x1);
        all.y0 = std::min(all.y0, box.y0);
        all.y1 = std::max(all.y1, box.y1);
    };
    for (const auto& layer : build.layers) take(drawn(build, layer.leg, layer.box));
    for (const auto& foil : build.foils) take(drawn(build, foil.leg, foil.box));
    for (const auto& beyond : overshoots(build)) take(beyond.box);
    return all;
}

Frame fitted(const coil::Box& box, const QRectF& area) noexcept {
    if (box.width() <= 0 || box.height() <= 0) return {1, area.center()};
    const double scale = std::max(1e-3, std::min(area.width() / box.width(), area.height() / box.height()));
    const QPointF middle(box.middle() * scale, -(box.y0 + box.y1) / 2 * scale);
    return {scale, area.center() - middle};
}

double rulerStep(double scale, double least) noexcept {
    if (!(scale > 0)) return 1;
    const double wanted = least / scale;
    const double decade = std::pow(10.0, std::floor(std::log10(wanted)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * decade >= wanted * (1 - 1e-12)) return times * decade;
    return 10 * decade;
}

}  // namespace cut
