// SPDX-License-Identifier: GPL-3.0-or-later
// The files of one name in several folders of data.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace exchange {

/// Reads every file of these names that exists, folder by folder; a folder that does not exist is an empty one. Throws
/// units::BadInput for one that cannot be read.
[[nodiscard]] std::vector<catalog::CatalogFile> namedFiles(const std::vector<std::string>& folders,
                                                           std::initializer_list<const char*> names);

}  // namespace exchange
