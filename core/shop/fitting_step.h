// SPDX-License-Identifier: GPL-3.0-or-later
// How frame, clamps, bolts, can and cup go on. For the room's own sources.
#pragma once

#include "shop/finishing.h"

namespace shop {

inline constexpr const char* fittingTitle = "Frame, clamps, can";

/// The job of finishing that puts the design's fittings on; without words where it has none.
[[nodiscard]] FinishingStep fittingStep(const Materials& materials);

}  // namespace shop
