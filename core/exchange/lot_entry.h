// SPDX-License-Identifier: GPL-3.0-or-later
// The alloy entry that comes of a measured lot.
#pragma once

#include <string>
#include <string_view>

#include "catalog/catalog.h"

namespace exchange {

/// A lot's points fitted with an alloy's law (`magnetics::lotFit`), as it is written.
struct FittedLot {
    /// A catalog file "alloys.json" with one entry that names the points' file, the residual and each number's
    /// uncertainty as sources. What the lot does not say is taken from the alloy it is like, whose sources are kept.
    std::string entry;
    std::string table;  ///< field_A_per_m,flux_T,fit_T,deviation_percent, rising in field
    std::string words;  ///< numbers with standard uncertainty, residual, and what makes them less certain, a line each
};

/// Reads a lot's table as `readLot` does and fits it. `key` and `title` are the entry's; `like` an alloy of the same
/// kind with coercivity and saturation. Throws units::BadInput with every fault of the table.
[[nodiscard]] FittedLot fittedLot(std::string_view text, const std::string& file, const std::string& key,
                                  const std::string& title, const catalog::Alloy& like);

}  // namespace exchange
