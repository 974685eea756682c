// SPDX-License-Identifier: GPL-3.0-or-later
// The layers of a coil build as boxes in one window.
#pragma once

#include <vector>

#include "coil/coil_build.h"
#include "field/leakage.h"
#include "field/perimeter.h"

namespace field {

/// True if layers stand on both legs of a two-leg core.
[[nodiscard]] bool bothLegsUsed(const coil::CoilBuild& build);

/// The window; as wide as the coil where the coil is wider.
[[nodiscard]] Window windowAround(const coil::CoilBuild& build);

/// A box per layer, in `build.layers` order; x from the leg in use; with both in use from the
/// first, the second leg's layers mirrored.
[[nodiscard]] std::vector<CurrentBox> boxesInWindow(const coil::CoilBuild& build);

/// Turn length against x, as coil::turnLength, continued straight to the tongue.
[[nodiscard]] Perimeter perimeterOf(const coil::CoilBuild& build);

}  // namespace field
