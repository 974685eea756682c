// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers and names as the papers of the shop print them. For the room's own sources.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"

namespace shop {

/// `value` with exactly `decimals` digits behind the point, independent of language.
[[nodiscard]] std::string fixed(double value, int decimals);
/// A pull in the grams that spring balances show, given in N (standard gravity 9.80665 m/s2, ISO 80000-3): "36 g".
[[nodiscard]] std::string grams(double newtons);
/// "low flange" or "high flange".
[[nodiscard]] const char* flange(bool low) noexcept;
/// Turns: "145", "145.5".
[[nodiscard]] std::string turnsText(double turns);
/// "1 turn", "3 turns": `count` and `one` with an s where there is not one of it.
[[nodiscard]] std::string counted(double count, const std::string& one);
/// "1, 2 and 3".
[[nodiscard]] std::string listedWords(const std::vector<std::string>& names);

/// What a catalog entry is called: its title, else its key.
template <class Part>
[[nodiscard]] std::string titleOf(const design::Design& design, const catalog::PartRef<Part>& ref,
                                  const catalog::Catalog& shop) {
    const Part* part = design::part(design, ref, shop);
    return part != nullptr && !part->title.empty() ? part->title : ref.key;
}
/// The terminal of that name, or null.
[[nodiscard]] const design::Terminal* terminalOf(const design::Design& design, const std::string& name);
/// "pin 3", with its name behind where that is another: "pin 3 (screen)".
[[nodiscard]] std::string pinWords(const design::Terminal& terminal);
/// "pin 3", or "green lead".
[[nodiscard]] std::string terminalPlace(const design::Terminal& terminal);

}  // namespace shop
