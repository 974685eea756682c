// SPDX-License-Identifier: GPL-3.0-or-later
// A design drawn up from a handful of choices.
#pragma once

#include "seek/core_choice.h"
#include "seek/held.h"
#include "seek/need.h"
#include "seek/order.h"
#include "seek/stock.h"

namespace seek {

/// Sizes that are chosen freely.
struct Sizes {
    double turns = 100;         ///< of the winding with the fewest; made whole
    double drivenShare = 0.5;   ///< of the wire's radial room, for the driven side
    double fill = 0.9;          ///< share of the window's depth that the coil may take
    double barrier = 0.1e-3;    ///< insulation between sections, m; made a multiple of 25 um
    double interlayer = 25e-6;  ///< between layers, m; the nearest stock thickness
    bool operator==(const Sizes&) const = default;
};

/// Turns over the least that low end and level ask for, where nothing else is known.
inline constexpr double usualTurns = 1.25;
/// That many turns over the core's least, as many as its window lets through; the rest as is usual.
[[nodiscard]] Sizes sizesAt(const CoreChoice& core, double overLeast);

/// What is the same for every draft.
struct Bench {
    const Need& need;
    const catalog::Catalog& shop;
    Stock stock;
    Held held;
};

/// The design, or nothing where no wire fits. Windings of a side share its room by their turns; each takes the wire,
/// or wires in hand, with the most copper that fits its room in whole layers. Terminals keep their pins where the
/// bobbin has them, else they take the next free one.
[[nodiscard]] design::DesignPtr drawn(const Bench& bench, const CoreChoice& core, const Order& order,
                                      const Sizes& sizes);

}  // namespace seek
