// SPDX-License-Identifier: GPL-3.0-or-later
// A unit on a two-leg core that is its own mirror image.
#pragma once

#include "small_figure.h"

namespace small {

/// A half of a winding: on a leg of its own, its outer terminal at its start (inside) or turned about.
inline design::Winding halfOf(const char* name, const char* outer, const char* middle, bool turned) {
    return turned ? windingOf(name, middle, outer) : windingOf(name, outer, middle);
}

/// A line unit on a two-leg core, each leg with half of both windings, the second leg the mirror image of the first:
/// its halves begin inside at the outer terminal too, and are wound in the other sense.
inline design::Design mirrored(bool firstTurned = false, bool secondTurned = false) {
    auto d = transformer();
    d.core.kind = design::CoreKind::TwoLeg;
    auto sheet = shop().sheets.at("sheet");
    sheet.outerLeg = sheet.tongue;
    d.core.sheet.own = std::make_shared<catalog::Sheet>(sheet);
    d.terminals.resize(6);
    for (std::size_t k = 0; k < 6; ++k) d.terminals[k].name = std::string("1234mn").substr(k, 1);
    d.windings = {halfOf("P1", "1", "m", firstTurned), halfOf("P2", "2", "m", secondTurned),
                  halfOf("S1", "3", "n", false), halfOf("S2", "4", "n", false)};
    d.coil = {design::Place{}, design::Place{}};
    for (const std::size_t leg : {0U, 1U}) {
        const bool turned = leg == 0 ? firstTurned : secondTurned;
        auto inner = sectionOf(leg == 0 ? "P1" : "P2", "a", 600);
        auto outer = sectionOf(leg == 0 ? "S1" : "S2", "a", 600);
        inner.reversed = (leg == 1) != turned;
        outer.reversed = leg == 1;
        d.coil[leg].leg = static_cast<int>(leg) + 1;
        d.coil[leg].order = {{inner}, {barrier(2e-4)}, {outer}};
    }
    auto& hookUp = d.hookUps.front();
    hookUp.earths = {"core"};
    for (auto& port : hookUp.ports) port.earthing = design::Earthing::Balanced;
    return d;
}

}  // namespace small
