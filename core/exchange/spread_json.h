// SPDX-License-Identifier: GPL-3.0-or-later
// What a whole spread says, as JSON.
#pragma once

#include "json/value.h"
#include "spread/sensitivity.h"
#include "spread/summary.h"

namespace exchange {

/// One value for the same design, units, seed and lots, however it was divided: no file names, part counts or times.
[[nodiscard]] json::Value spreadJson(const spread::Head& head, const spread::Summary& summary);

/// Each column's slopes, greatest effect first.
[[nodiscard]] json::Value sensitivityJson(const spread::Head& head,
                                          const std::vector<std::vector<spread::Slope>>& slopes);

}  // namespace exchange
