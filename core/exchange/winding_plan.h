// SPDX-License-Identifier: GPL-3.0-or-later
// What a winding machine has to do for one coil, step by step, before it is put into blocks or a table.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "coil/coil_build.h"
#include "coil/hand.h"
#include "exchange/winder.h"

namespace exchange {

/// A pin in the program's coordinates, m.
struct PinPlace {
    double cross = 0, traverse = 0;
};

/// Something that the operator, or the pin wrap, does at a point of a step.
struct PlannedStop {
    StopKind kind = StopKind::Paper;
    double after = 0;              ///< turns from the step's first
    bool opening = false;          ///< before the first turn
    std::string words;             ///< the message, in plain words
    std::optional<PinPlace> wrap;  ///< the machine wraps this pin instead of stopping
};

/// One layer of the wires that are wound together.
struct PlannedLayer : coil::HandLayer {
    bool still = false;  ///< foil: the guide does not move
    /// Where the guide stands after `done` turns of the layer: half a pitch inside the edge that it begins at, a pitch
    /// further each turn, and still during the last turn, so that the wire stays half a pitch inside the other edge.
    [[nodiscard]] double guide(double done) const;
};

/// One item of the winding order, or several sections in one hand.
struct PlannedStep {
    design::ItemIndex item;  ///< the first, of the design's order
    std::string title;
    bool reversed = false, foil = false;
    double tension = 0;  ///< N, of all wires of the hand; 0: not the machine's matter
    std::vector<PlannedLayer> layers;
    std::vector<PlannedStop> stops;  ///< in the order in which they come
    [[nodiscard]] double turns() const { return layers.empty() ? 0 : layers.back().first + layers.back().turns; }
};

struct WindingPlan {
    std::string design, partNumber, revision;
    int leg = 1, legs = 1;
    double travelDepth = 0;  ///< depth at which nothing is in the guide's way, m
    std::vector<PlannedStep> steps;
};

/// The coil on `leg` (from 1) of a checked design, as `winder` has to wind it. Throws units::BadInput if there is
/// nothing to wind on that leg, or where the coil lies outside the machine's travel. Stops: insulation between sections
/// and layers; shields; taps; foil; another wire than before; at the ends of every section a pin (by hand, or wrapped
/// by the machine) or a lead; before that, for wire finer than `thinWire`, the splice to a skein.
[[nodiscard]] WindingPlan windingPlan(const design::Design& design, const coil::CoilBuild& build,
                                      const catalog::Catalog& shop, const Winder& winder, int leg);

}  // namespace exchange
