// SPDX-License-Identifier: GPL-3.0-or-later
// What differs between two designs, in words.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// One line a difference, in the order a design is thought: "P.a turns: 120 → 130", "S.a moved outward past foil SH1",
/// "core stack height: 10 mm → 12 mm". Quantities are written with their units. Empty when the designs are equal.
/// Copies of catalog entries are compared where both designs carry one; that one carries a copy more is no difference.
[[nodiscard]] std::vector<std::string> differences(const Design& a, const Design& b);

}  // namespace design
