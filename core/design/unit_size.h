// SPDX-License-Identifier: GPL-3.0-or-later
// How large a unit is.
#pragma once

#include "design/design.h"

namespace design {

/// Over all, m: x across the legs, y along the tongue, z square to the sheets.
struct UnitSize {
    double x = 0, y = 0, z = 0;
    bool operator==(const UnitSize&) const = default;
};

/// How a unit lies on a board: turned so that its longer side is the length, m.
struct Footprint {
    double length = 0, width = 0, height = 0;
    bool operator==(const Footprint&) const = default;
};
[[nodiscard]] Footprint footprint(const UnitSize& size) noexcept;
/// What a brief leaves it, turned alike; a side that is free is infinite. Turning both so is no loss: a unit that lies
/// in it either way has its longer side within the longer one.
[[nodiscard]] Footprint footprint(const Size& allowed) noexcept;

/// Core and coil without fittings: a coil may fill its window from wall to wall, two coils share one. Geometry.
[[nodiscard]] UnitSize bareSize(const Core& core, const catalog::Sheet& sheet);
/// With everything that stands out beyond them; bolts, which are cut to length, are left out. Without a known sheet
/// what the fittings are alone.
[[nodiscard]] UnitSize unitSize(const Design& design, const catalog::Catalog& shop);

}  // namespace design
