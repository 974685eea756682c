// SPDX-License-Identifier: GPL-3.0-or-later
// Every one change that a re-spin may try. For the room's own sources.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "seek/respin.h"

namespace seek {

/// Recipe and unit while they are changed.
struct Spun {
    design::Design recipe, unit;
};

/// One thing to change, in amounts that rise.
struct Way {
    Change change = Change::Paper;
    std::string what;
    std::vector<double> amounts;
    bool between = false;  ///< amounts between these do too
    /// Changes both alike and returns the share by which; 0 or less: it cannot be done, or is no change.
    std::function<double(Spun&, double amount)> apply;
};
[[nodiscard]] std::vector<Way> waysOf(const design::Design& recipe, const catalog::Catalog& shop);

}  // namespace seek
