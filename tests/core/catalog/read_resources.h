// SPDX-License-Identifier: GPL-3.0-or-later
// The catalog files as they lie in the source tree.
#pragma once

#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "catalog/catalog.h"

inline catalog::CatalogFile resource(const std::string& name) {
    std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR "/resources/") + name, std::ios::binary);
    return {name, {std::istreambuf_iterator<char>(file), {}}};
}

inline std::vector<catalog::CatalogFile> resourceFiles() {
    return {resource("sheets.json"),     resource("alloys.json"),   resource("wires.json"),   resource("bobbins.json"),
            resource("insulation.json"), resource("fittings.json"), resource("sundries.json")};
}

/// The whole catalog, read once.
inline const catalog::Catalog& shopCatalog() {
    static const catalog::Catalog shop = catalog::load(resourceFiles());
    return shop;
}
