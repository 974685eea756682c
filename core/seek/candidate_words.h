// SPDX-License-Identifier: GPL-3.0-or-later
// A candidate in words.
#pragma once

#include <string>

#include "seek/search.h"

namespace seek {

/// "EI54, nickel-50, sheets of 0.35 mm, stack 18 mm, bobbin EI54-1"
[[nodiscard]] std::string coreWords(const design::Design& design);
/// "P 2700 turns of AWG 38 single; S 450 turns of 2 wires AWG 31 single"
[[nodiscard]] std::string windingWords(const design::Design& design);
/// Cost where there are prices, copper, sheets, size over all.
[[nodiscard]] std::string burdenWords(const Burden& burden, const shop::Prices* prices);
/// The weakest promise and by how much it is kept; empty without promises.
[[nodiscard]] std::string weakestWords(const Candidate& candidate);

}  // namespace seek
