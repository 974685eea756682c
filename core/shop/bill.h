// SPDX-License-Identifier: GPL-3.0-or-later
// Bill of materials and cost of one unit. Inside papers only.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "shop/materials.h"
#include "shop/paper_head.h"
#include "shop/prices.h"

namespace shop {

inline constexpr std::array<int, 4> lotSizes{1, 10, 100, 1000};

/// What goes into one unit, with waste.
struct BillLine {
    std::string part;  ///< as a price file names it: "AWG 38 single", "EI48 nickel-80 0.2 mm"
    std::string what;
    double amount = 0;
    std::string unit;             ///< kg, m, m2, piece
    std::optional<double> price;  ///< of one `unit`
    std::optional<double> cost;   ///< of the line
    double minimum = 0;           ///< smallest buy of the part, in `unit`
    bool operator==(const BillLine&) const = default;
};

/// Cost of one unit in a lot of so many.
struct CostAt {
    int quantity = 1;
    double material = 0;
    double smallestBuys = 0;  ///< what has to be bought and is left over, shared by the lot
    double labour = 0;
    double setUp = 0;    ///< labour, once for the lot
    double tooling = 0;  ///< once
    double scrap = 0;    ///< good units bear those that are lost: (material + labour) s / (1 - s)
    double total = 0;
    bool operator==(const CostAt&) const = default;
};

struct Bill {
    PaperHead head;
    std::vector<BillLine> lines;
    double minutes = 0, setUpMinutes = 0;  ///< of work: a unit, a lot
    std::string currency, validUntil;      ///< empty: no prices were given
    std::vector<CostAt> costs;
    std::vector<std::string> unpriced;  ///< parts that the costs do not hold
    bool operator==(const Bill&) const = default;
};

/// What the times of a price file are counted on.
struct WorkCount {
    double turns = 0;  ///< of the spindle: wires in one hand count once
    int wraps = 0, shields = 0, ends = 0, sheets = 0;
};
[[nodiscard]] WorkCount workOf(const design::Design& design, const coil::CoilBuild& build, const Materials& materials);

/// The bill of a checked design; `prices` null: without costs.
[[nodiscard]] Bill bill(const design::Design& design, const catalog::Catalog& shop, const Issue& issue,
                        const Prices* prices);

/// The bill as a table: lines of parts, then of work and totals, with cost at every lot size.
[[nodiscard]] std::string billCsv(const Bill& bill);

}  // namespace shop
