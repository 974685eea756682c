// SPDX-License-Identifier: GPL-3.0-or-later
// What to fetch from the store for one unit, a line each.
#pragma once

#include <string>
#include <vector>

#include "shop/lengths.h"
#include "shop/materials.h"

namespace shop {

struct FetchRow {
    std::string what, amount;
    bool operator==(const FetchRow&) const = default;
};
/// Wires (those of the same kind together), foils, films, sheets, leads, bobbins, compound, in the order of use.
[[nodiscard]] std::vector<FetchRow> fetchRows(const Materials& materials, const Lengths& in = {});

}  // namespace shop
