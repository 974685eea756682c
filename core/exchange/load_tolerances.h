// SPDX-License-Identifier: GPL-3.0-or-later
// A shop's tolerances out of folders.
#pragma once

#include <string>
#include <vector>

#include "catalog/shop_tolerance.h"

namespace exchange {

/// Reads tolerances.json as far as it exists in each folder, as `loadCatalog` reads its files: an entry of a later
/// folder rules. Throws units::BadInput with every fault of every file.
[[nodiscard]] catalog::Tolerances loadTolerances(const std::vector<std::string>& folders);

}  // namespace exchange
