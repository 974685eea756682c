// SPDX-License-Identifier: GPL-3.0-or-later
// What may be taken from the catalog for a design that is sought.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "shop/prices.h"

namespace seek {

/// Keys of current entries. With prices only what is priced.
struct Stock {
    std::vector<std::string> wires;    ///< thickest first, of each size the thinnest enamel; 0.06 to 0.8 mm bare
    std::vector<std::string> bobbins;  ///< of one chamber, for a shell sheet
    std::vector<std::string> alloys;
    std::string film;  ///< between the layers of a section: that with the most stock thicknesses
    std::string tape;  ///< between sections: the thinnest tape that is priced, else the film
};
[[nodiscard]] Stock stockOf(const catalog::Catalog& shop, const shop::Prices* prices);

}  // namespace seek
