// SPDX-License-Identifier: GPL-3.0-or-later
// The limits of a test plan, as its table for a sequencer tells them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace exchange {

/// One row that has a limit.
struct PlanLimit {
    std::string stage, name;          ///< "laminated", "dcr.P"
    std::optional<double> low, high;  ///< in `unit`
    std::string unit;                 ///< "ohm"; "" a pure number
    bool operator==(const PlanLimit&) const = default;
};

/// Reads the table that `write DESIGN --limits` writes: a first line with the columns stage, name, low, high and unit
/// among others, then a line a step. Rows without a limit are left out. Throws units::BadInput, place "F: line 3".
[[nodiscard]] std::vector<PlanLimit> readLimits(std::string_view text, const std::string& file);

/// The limit of a test: in that stage, or with "" in the last that has one. Blanks and dots in names are alike. Null:
/// none.
[[nodiscard]] const PlanLimit* limitOf(const std::vector<PlanLimit>& limits, const std::string& name,
                                       const std::string& stage);

}  // namespace exchange
