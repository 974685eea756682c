// SPDX-License-Identifier: GPL-3.0-or-later
// Catalog files: the first byte says of which kind.
#include <array>

#include "altered.h"
#include "catalog/catalog.h"
#include "reader.h"

namespace {

constexpr std::array<const char*, 7> kinds{"alloys.json", "bobbins.json",  "insulation.json", "sheets.json",
                                           "wires.json",  "fittings.json", "sundries.json"};

void read(std::string_view bytes) {
    if (bytes.empty()) return;
    const std::string name = kinds[static_cast<unsigned char>(bytes.front()) % kinds.size()];
    const std::string text = fuzz::givenText(bytes.substr(1), "resources/" + name);
    static_cast<void>(fuzz::unlessRefused(name, [&] { return catalog::load({{name, text}}); }));
}

const fuzz::Registered catalogs("catalog", read);

}  // namespace
