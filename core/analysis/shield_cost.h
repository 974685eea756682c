// SPDX-License-Identifier: GPL-3.0-or-later
// What each shield costs and gives: the design with it and without, side by side.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// One way of shielding a design.
struct ShieldVariant {
    std::string name;                           ///< "as designed", "without inner shield", "without shields"
    std::vector<const units::Figure*> figures;  ///< in the order of the first variant's; null: there is none
    AnswerPtr answer;                           ///< holds the figures
};

/// The design as it is, then without each of its shields in turn, and, of several, without any: leakage of each pair,
/// input capacitance, upper -3 dB, common-mode rejection and output balance of the hook-up that `now` shows. A shield
/// that is left out leaves no thickness; insulation beside it stays. Fields that do not change are taken from `now`.
/// Only the design itself where it has no shield; empty if `stop` was set.
[[nodiscard]] std::vector<ShieldVariant> shieldCosts(const design::Design& design, const catalog::Catalog& shop,
                                                     const AnswerPtr& now, const std::stop_token& stop = {});

/// As a table for reading, a line a figure and a column a variant: "119 µH", "96 µH (−19 %)".
[[nodiscard]] std::vector<std::vector<std::string>> table(const std::vector<ShieldVariant>& variants);

}  // namespace analysis
