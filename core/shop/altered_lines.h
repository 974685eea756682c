// SPDX-License-Identifier: GPL-3.0-or-later
// Which lines of the inside papers another design alters.
#pragma once

#include <string>
#include <vector>

#include "shop/bill.h"
#include "shop/winding_sheet.h"

namespace shop {

/// A line as it is printed, and where.
struct PaperLine {
    std::string place;  ///< "winding sheet, step 1.3", "bill of materials"
    std::string words;
    bool operator==(const PaperLine&) const = default;
};

/// Everything that the sheet tells the winder in words, in the order in which it stands there. The head, which names
/// revision and digest, is left out.
[[nodiscard]] std::vector<PaperLine> linesOf(const WindingSheet& sheet);
/// Parts with their amounts, and costs where there are prices.
[[nodiscard]] std::vector<PaperLine> linesOf(const Bill& bill);

struct AlteredLine {
    std::string place, before, after;  ///< `before` "": a new line; `after` "": it is gone
    bool operator==(const AlteredLine&) const = default;
};

/// What stands at each place in one list and not in the other, paired in order. Lines that have only moved within their
/// place are not altered.
[[nodiscard]] std::vector<AlteredLine> alteredLines(const std::vector<PaperLine>& before,
                                                    const std::vector<PaperLine>& after);
/// Of winding sheet and bill of a checked design.
[[nodiscard]] std::vector<PaperLine> paperLines(const design::Design& design, const catalog::Catalog& shop,
                                                const Prices* prices);
/// Of winding sheet and bill of two checked designs.
[[nodiscard]] std::vector<AlteredLine> alteredLines(const design::Design& before, const design::Design& after,
                                                    const catalog::Catalog& shop, const Prices* prices);

}  // namespace shop
