// SPDX-License-Identifier: GPL-3.0-or-later
// A shop's prices and times.
#include <cmath>

#include "reader.h"
#include "shop/prices.h"

namespace {

void read(std::string_view bytes) {
    const auto prices = fuzz::unlessRefused("f", [&] { return shop::readPrices(bytes, "f"); });
    if (!prices) return;
    for (const auto& [name, price] : prices->parts)
        fuzz::require(std::isfinite(price.value) && price.value >= 0 && price.minimum >= 0, "a price below nothing");
    fuzz::require(prices->scrap >= 0 && prices->scrap < 1, "a lot that is all scrap");
}

const fuzz::Registered prices("prices", read);

}  // namespace
