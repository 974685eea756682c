// SPDX-License-Identifier: GPL-3.0-or-later
// Copper in the drawing: sections down to their layers and wires, and shields.
#pragma once

#include "cut/canvas.h"

namespace cut {

/// A layer at least this thick on the ground is drawn by itself; a wire at least this thick as a circle.
inline constexpr double layerFrom = 4;
inline constexpr double wireFrom = 6;

/// Whether the section's layers are drawn one by one at this scale.
[[nodiscard]] bool showsLayers(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape);

/// A section: its ground and hatch; where the scale allows, its layers, and their wires. `shared`: another section of
/// the same hand has been painted in the same place, whose ground and hatch stay to be seen.
void paintSection(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape, bool shared);

/// A shield as a heavy line with both its ends open.
void paintShield(const Canvas& canvas, const Shape& shape);

/// Start as a filled, finish as an open circle.
void paintEnds(const Canvas& canvas, const Shape& shape);

}  // namespace cut
