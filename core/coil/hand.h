// SPDX-License-Identifier: GPL-3.0-or-later
// What is wound in one go: a section, or the sections that share a hand, with what falls at which turn.
#pragma once

#include <string>
#include <vector>

#include "coil/coil_build.h"

namespace coil {

/// One wire, or several strands, of a hand. Points into the design and the build that it was made from.
struct HandWire {
    design::ItemIndex item;
    const design::Section* section = nullptr;
    const design::Winding* winding = nullptr;
    std::vector<const Layer*> pieces;  ///< in winding sequence
    [[nodiscard]] bool foil() const { return winding != nullptr && winding->foil.has_value(); }
};

/// One layer of the hand, as the wire that has most turns in it lays it.
struct HandLayer {
    double first = 0, turns = 0;  ///< turns from the hand's first turn to this layer's; turns in it
    bool fromLow = true;          ///< begins at the low end
    double low = 0, high = 0;     ///< edges of the wound stretch, m
    double pitch = 0;             ///< m
    double outside = 0;           ///< radial place of its outer side, m from the tongue
    double turnLength = 0;        ///< mean turn, m
};

/// What falls after the first turn.
enum class MomentKind { Tap, Finish, Paper };
struct HandMoment {
    MomentKind kind = MomentKind::Tap;
    double after = 0;      ///< turns from the hand's first
    std::size_t wire = 0;  ///< index in `wires`
    std::string terminal;  ///< of a tap
};

struct Hand {
    std::vector<HandWire> wires;
    std::vector<HandLayer> layers;
    std::vector<HandMoment> moments;  ///< in order; at the same turn taps, then ends, then paper
    std::size_t last = 0;             ///< index of the last item taken
    [[nodiscard]] double turns() const { return layers.empty() ? 0 : layers.back().first + layers.back().turns; }
};

/// What is wound from section `item` of place `place` on (indices from 0) of a checked design laid out.
[[nodiscard]] Hand handAt(const design::Design& design, const CoilBuild& build, std::size_t place, std::size_t item);

/// Which item each dielectric of the build belongs to, in the order of `build.dielectrics`: its barrier, or the section
/// (the hand's first) whose layers it parts; {-1, -1} for the bobbin. They are laid in winding order.
[[nodiscard]] std::vector<design::ItemIndex> itemsOfDielectrics(const design::Design& design, const CoilBuild& build);

/// "1.3": the number of a step in winding sheet, winding program and step table: place and item, from 1.
[[nodiscard]] std::string stepNumber(const design::ItemIndex& item);

}  // namespace coil
