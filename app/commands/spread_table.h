// SPDX-License-Identifier: GPL-3.0-or-later
// A spread as text for people.
#pragma once

#include <string>

#include "spread/sensitivity.h"
#include "spread/summary.h"

namespace commands {

/// Each promise with its yield, spread, guaranteed limits and what governs it; figures that are only looked at behind.
[[nodiscard]] std::string spreadTable(const spread::Head& head, const spread::Summary& summary);

/// Each promise with the numbers that move it most.
[[nodiscard]] std::string sensitivityTable(const spread::Head& head,
                                           const std::vector<std::vector<spread::Slope>>& slopes);

}  // namespace commands
