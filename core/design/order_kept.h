// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps the electrical order of windings while the coil changes around them. For the room's own sources.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// Section names of every winding from start to finish.
using SeriesOrder = std::map<std::string, std::vector<std::string>>;

[[nodiscard]] SeriesOrder seriesOrder(const Design& d);
/// Gives every winding whose sections came to lie otherwise than in `before` the order `wanted`: written out where
/// the coil's own order is another, left out where it is the same. Windings that nothing happened to stay as they are.
void keepOrder(Design& after, const Design& before, const SeriesOrder& wanted);

}  // namespace design
