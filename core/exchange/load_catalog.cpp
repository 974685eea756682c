// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_catalog.h"

#include "exchange/named_files.h"

namespace exchange {

catalog::Catalog loadCatalog(const std::vector<std::string>& folders) {
    return catalog::load(namedFiles(folders, {"sheets.json", "alloys.json", "wires.json", "bobbins.json",
                                              "insulation.json", "fittings.json", "sundries.json"}));
}

}  // namespace exchange
