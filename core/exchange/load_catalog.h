// SPDX-License-Identifier: GPL-3.0-or-later
// The catalog out of folders.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace exchange {

/// Reads sheets.json, alloys.json, wires.json, bobbins.json, insulation.json, fittings.json and sundries.json as far as
/// they exist in each folder, in the order of the folders: an entry of a later folder rules over one of the same key.
/// The program's own resources come first, the user's folder last; a folder that does not exist is an empty one. Throws
/// units::BadInput with every fault of every file.
[[nodiscard]] catalog::Catalog loadCatalog(const std::vector<std::string>& folders);

}  // namespace exchange
