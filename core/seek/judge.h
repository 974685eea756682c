// SPDX-License-Identifier: GPL-3.0-or-later
// How a draft stands to the brief, and what it costs.
#pragma once

#include <stop_token>
#include <string>
#include <vector>

#include "analysis/alike.h"
#include "seek/need.h"
#include "shop/prices.h"

namespace seek {

/// Margins are told in those at which a promise stops being thin: below 0 broken, from 0 to 1 thin, above kept.
inline constexpr double noMargin = -10;  ///< of what could not be computed; also the least that is told
inline constexpr double anyMargin = 10;  ///< of what cannot be broken; also the most

/// Margins of all promises and masks.
struct Verdict {
    std::vector<double> margins;
    [[nodiscard]] double weakest() const;
    [[nodiscard]] double broken() const;  ///< sum of the margins below 0
};

/// Judges drafts with the same ports and windings, by their true figures. Many threads may ask at once.
class Judge {
public:
    /// `any`: one of the drafts.
    Judge(const design::Design& any, const catalog::Catalog& shop) : alike_(any, shop, {}), brief_(any.brief) {}
    [[nodiscard]] Verdict verdict(const design::Design& design, const std::stop_token& stop) const;
    [[nodiscard]] const std::vector<analysis::Column>& columns() const { return alike_.columns(); }

private:
    analysis::Alike alike_;
    design::Brief brief_;
};

/// The margin of a promise as an answer tells it, in the same measure.
[[nodiscard]] double marginOf(const analysis::PromiseState& state);

/// What a design takes.
struct Burden {
    double cost = 0;              ///< of one unit in a lot of 100 by the prices; without prices copper and sheets, kg
    double copper = 0, iron = 0;  ///< kg
    double length = 0, width = 0, height = 0;  ///< over all, m: core flat on the board, coil as deep as the window
    bool priced = false;
    [[nodiscard]] double volume() const { return length * width * height; }
};
[[nodiscard]] Burden burdenOf(const design::Design& design, const catalog::Catalog& shop, const shop::Prices* prices);

}  // namespace seek
