// SPDX-License-Identifier: GPL-3.0-or-later
// A shop's tolerances.
#include "altered.h"
#include "catalog/shop_tolerance.h"
#include "reader.h"

namespace {

void read(std::string_view bytes) {
    const std::string file = "tolerances.json", text = fuzz::givenText(bytes, "resources/tolerances.json");
    static_cast<void>(fuzz::unlessRefused(file, [&] { return catalog::loadTolerances({{file, text}}); }));
}

const fuzz::Registered tolerances("tolerances", read);

}  // namespace
