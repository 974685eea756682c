// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/half_turns.h"

#include <cmath>

namespace coil {
namespace {

/// First window less second, in half turns, after `turns` from the front: 0, 1, 0, 1, … with straight lines between.
double passed(double turns) {
    const double halves = std::fmod(2 * turns, 2);
    return halves <= 1 ? halves : 2 - halves;
}

/// Marks the layers of one section; `side`: +1 if its first half turn passes the first window, -1 the second.
void markSection(const design::Section& section, int side, CoilBuild& build) {
    double done = 0;
    for (auto& layer : build.layers) {
        if (layer.winding != section.winding || layer.section != section.name) continue;
        layer.oneSided = 0.5 * side * (passed(done + layer.turns) - passed(done));
        if (std::abs(layer.oneSided) < 1e-9) layer.oneSided = 0;
        done += layer.turns;
    }
}

}  // namespace

void markHalfTurns(const design::Design& design, CoilBuild& build) {
    if (build.legs != 1) return;
    for (const auto& winding : design.windings) {
        int side = 1;
        for (const auto* section : design::sectionsOf(design, winding)) {
            if (!section->start.empty() || winding.connection == design::Connection::Parallel) side = 1;
            markSection(*section, side, build);
            if (std::fmod(std::round(2 * section->turns), 2) != 0) side = -side;
        }
    }
}

}  // namespace coil
