// SPDX-License-Identifier: GPL-3.0-or-later
// What faces what along the radius.
#pragma once

#include "field/coil_scene.h"

namespace field {

/// Adds the facings along the radius: tongue to the first conductor, conductor to conductor, the last one to the outer
/// leg or to the other leg's coil. The axis is cut wherever a conductor or sheet begins or ends; in each stretch every
/// conductor sees the next one there. False where the coil reaches beyond its window.
[[nodiscard]] bool addRadialFacings(Scene& scene, std::vector<Facing>& facings);

}  // namespace field
