// SPDX-License-Identifier: GPL-3.0-or-later
// What units of a part say together.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/limits_file.h"
#include "records/store.h"

namespace commands {

/// What is asked of a report.
struct UnitsQuestion {
    records::Filter filter;
    std::string test;                         ///< "" all
    std::optional<double> atLeast, atMost;    ///< of the one test, in its unit
    std::vector<exchange::PlanLimit> limits;  ///< of a test plan; where `atLeast` and `atMost` say nothing
    std::size_t subgroup = 1;                 ///< 1: single values
    std::string reference;                    ///< serial of the reference unit; "" none
    bool outside = false;                     ///< for a customer: no causes, no single serials
};
/// Yield with its interval, causes; of each test mean, deviation, whether it looks normal, Cp and Cpk, chart and what
/// is out of control; drift of the reference unit, whose readings count nowhere else.
[[nodiscard]] std::string unitsReport(records::Store& store, const UnitsQuestion& question);

}  // namespace commands
