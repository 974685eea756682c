// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/capacitance.h"

#include <algorithm>
#include <cmath>

#include "field/coil_scene.h"
#include "field/edge_window.h"
#include "field/facing_pairs.h"

namespace field {

namespace {

using Complex = std::complex<double>;

/// Per layer, between neighbouring turns. In a hand of several sections a turn's neighbours belong to the others (their
/// facings hold it): zero. A foil layer has one turn: zero.
std::vector<Complex> turnToTurn(Scene& scene) {
    const auto layers = scene.build().layers.size();
    std::vector<Complex> values(layers);
    std::vector<const Solid*> all;
    for (std::size_t i = 0; i < layers; ++i) all.push_back(&scene.solids()[i]);
    const auto inOneHand = [&](const Solid& a, const Solid& b) {
        if (&a == &b || a.leg != b.leg) return false;
        const double common = std::min(a.box.x1, b.box.x1) - std::max(a.box.x0, b.box.x0);
        return common > 0.5 * std::min(a.box.width(), b.box.width()) &&
               std::min(a.box.y1, b.box.y1) - std::max(a.box.y0, b.box.y0) > 0.5 * std::min(a.pitch, b.pitch);
    };
    for (std::size_t i = 0; i < layers; ++i) {
        const auto& s = *all[i];
        if (s.flat || std::any_of(all.begin(), all.end(), [&](const Solid* o) { return inOneHand(s, *o); })) continue;
        values[i] = scene.turnToTurn(s.bare, s.overall, s.pitch / s.strands, s.enamel) * s.turnLength;
    }
    return values;
}

}  // namespace

CapacitanceResult capacitances(const coil::CoilBuild& build, bool lossy) {
    CapacitanceResult result;
    Scene scene(build, lossy);
    if (!addRadialFacings(scene, result.facings)) {
        result.valid = false;
        result.why = "the coil reaches beyond its window: capacitance to what is there is left out";
    }
    addEndFacings(scene, result.facings);
    result.turnToTurn = turnToTurn(scene);
    const bool wild = std::any_of(build.layers.begin(), build.layers.end(), [](const auto& l) { return l.random; });
    result.spread = wild ? wildSpread : 0;
    return result;
}

}  // namespace field
