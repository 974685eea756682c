// SPDX-License-Identifier: GPL-3.0-or-later
// The catalog and the demo designs, for tests of papers' contents.
#pragma once

#include <string>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace demos {

inline const catalog::Catalog& shopCatalog() {
    static const catalog::Catalog one = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return one;
}
inline design::Design demo(const std::string& name) {
    const std::string path = std::string(COILWRIGHT_SOURCE_DIR "/demo-projects/") + name + "/" + name + ".coilwright";
    return *exchange::readDesign(exchange::readFile(path), path, shopCatalog()).design;
}

}  // namespace demos
