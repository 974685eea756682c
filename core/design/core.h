// SPDX-License-Identifier: GPL-3.0-or-later
// The core of a design: sheet, stack, joints.
#pragma once

#include <vector>

#include "catalog/alloy.h"
#include "catalog/parts.h"
#include "catalog/sheet.h"
#include "design/choices.h"
#include "units/quantity.h"

namespace design {

/// The sheets of one alloy in the stack.
struct StackPart {
    catalog::PartRef<catalog::Alloy> alloy;
    units::Quantity thickness = 0.35e-3;     ///< of one sheet, m
    units::Quantity share = 1;               ///< of the stack height; shares add up to 1
    units::Quantity permeabilityFactor = 1;  ///< for anneal, handling, clamping, varnish
    json::Value extra;
    bool operator==(const StackPart&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, StackPart& p) {
    visit.need("alloy", p.alloy);
    visit.need("thickness", p.thickness, json::aboveUpTo(0, 0.002).in("m"));
    visit.may("share", p.share, json::within(0, 1));
    visit.may("permeability_factor", p.permeabilityFactor, json::aboveUpTo(0, 10));
}

/// A closed screen can of high permeability round the unit, taken as a sphere of its diameter. Its lid is drawn tight
/// and it is annealed after forming: what is computed is the most it can do.
struct ScreenCan {
    units::Quantity diameter = 0.05;     ///< outer, m
    units::Quantity thickness = 0.5e-3;  ///< of its sheet, m
    double permeability = 20e3;          ///< relative, in weak fields, as annealed
    json::Value extra;
    bool operator==(const ScreenCan&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, ScreenCan& c) {
    visit.need("diameter", c.diameter, json::aboveUpTo(0, 1).in("m"));
    visit.need("thickness", c.thickness, json::aboveUpTo(0, 0.02).in("m"));
    visit.need("permeability", c.permeability, json::within(1, 1e6));
}

/// The core. `gap` is the total length of air in the magnetic path, m: for interleaved joints the effective value.
struct Core {
    CoreKind kind = CoreKind::Shell;
    catalog::PartRef<catalog::Sheet> sheet;
    std::vector<StackPart> stack;
    StackPattern pattern = StackPattern::Blocks;
    units::Quantity height = 0.01;          ///< closed stack height, m
    units::Quantity stackingFactor = 0.92;  ///< metal share of the height
    Joint joint = Joint::Interleaved;
    units::Quantity gap = 0;
    std::vector<ScreenCan> cans;  ///< from the inside out
    json::Value extra;
    bool operator==(const Core&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Core& c) {
    visit.need("kind", c.kind);
    visit.need("sheet", c.sheet);
    visit.need("stack", c.stack);
    visit.may("pattern", c.pattern);
    visit.need("height", c.height, json::aboveUpTo(0, 0.5).in("m"));
    visit.may("stacking_factor", c.stackingFactor, json::aboveUpTo(0, 1));
    visit.may("joint", c.joint);
    visit.may("gap", c.gap, json::within(0, 0.01).in("m"));
    visit.may("cans", c.cans);
}

}  // namespace design
