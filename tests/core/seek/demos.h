// SPDX-License-Identifier: GPL-3.0-or-later
// The demo designs, catalog and invented prices, as the search is asked about them.
#pragma once

#include <string>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "seek/search.h"

namespace demos {

inline const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}
inline design::DesignPtr design(const std::string& name) {
    const std::string file = COILWRIGHT_SOURCE_DIR "/demo-projects/" + name + "/" + name + ".coilwright";
    return exchange::readDesign(exchange::readFile(file), file, shop()).design;
}
inline const shop::Prices& prices() {
    static const std::string file = COILWRIGHT_SOURCE_DIR "/resources/prices/example.csv";
    static const shop::Prices all = shop::readPrices(exchange::readFile(file), file);
    return all;
}

}  // namespace demos
