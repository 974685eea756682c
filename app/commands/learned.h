// SPDX-License-Identifier: GPL-3.0-or-later
// A unit's readings against the test plan of its design, as the verbs cause and fit take them.
#pragma once

#include <string>
#include <vector>

#include "commands/arguments.h"
#include "design/fixture.h"
#include "learn/probe.h"
#include "shop/test_plan.h"

namespace commands {

/// The test fixture after --fixture, else the shop's own or the example. Throws units::BadInput.
[[nodiscard]] design::Fixture fixtureAsked(const Arguments& arguments);

/// A design's test plan with all that it was made from.
struct Planned {
    design::Fixture fixture;
    shop::PlanPrediction prediction;
    shop::TestPlan plan;
};
[[nodiscard]] Planned plannedFor(const design::Design& design, const catalog::Catalog& shop,
                                 const Arguments& arguments);

/// One unit of a table of unit records.
struct ReadUnit {
    std::string serial, stage;
    learn::Readings readings;
};
/// The units of such a table, in its order; with `serial` those of that serial alone. Throws units::BadInput.
[[nodiscard]] std::vector<ReadUnit> readUnitsOf(const std::string& path, const std::string& serial);

}  // namespace commands
