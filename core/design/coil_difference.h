// SPDX-License-Identifier: GPL-3.0-or-later
// What differs between two coils. For the room's own sources.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// Adds a line for everything wound that differs: fields of sections and shields, what is added and removed, what has
/// moved past what, and barriers.
void compareCoils(const Design& a, const Design& b, std::vector<std::string>& lines);

}  // namespace design
