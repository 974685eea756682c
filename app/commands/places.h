// SPDX-License-Identifier: GPL-3.0-or-later
// Where the program finds its data and keeps its memory.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "catalog/shop_tolerance.h"

namespace commands {

/// Folders, absolute; one that does not exist is empty.
struct Places {
    std::string
        resources;      ///< COILWRIGHT_RESOURCES, else share/coilwright beside the program's folder, else the sources'
    std::string own;    ///< the shop's own parts: XDG_DATA_HOME/coilwright
    std::string demos;  ///< demo-projects beside the resources
};
[[nodiscard]] Places places();

/// The folders of data there are, the shop's own last.
[[nodiscard]] std::vector<std::string> resourceFolders(const Places& where);

/// All catalog files of the resources and then of the shop's own folder, which wins. Throws units::BadInput with every
/// fault.
[[nodiscard]] catalog::Catalog shopCatalog(const Places& where);

/// How far things vary in the shop, from the same folders. Throws units::BadInput with every fault.
[[nodiscard]] catalog::Tolerances shopTolerances(const Places& where);

/// The demo designs (.coilwright), sorted by path.
[[nodiscard]] std::vector<std::string> demoDesigns(const Places& where);

}  // namespace commands
