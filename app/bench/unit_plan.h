// SPDX-License-Identifier: GPL-3.0-or-later
// The test plan of a design with all that it was made from, and what finds causes by it.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "design/fixture.h"
#include "learn/cause.h"
#include "shop/test_plan.h"

namespace bench {

struct UnitPlan {
    design::DesignPtr design;
    std::shared_ptr<const catalog::Catalog> shop;
    catalog::Tolerances tolerances;
    design::Fixture fixture;
    shop::PlanPrediction prediction;
    shop::TestPlan plan;
    std::string part;  ///< as records name it: the part number, or the design's name where it has none
};
using UnitPlanPtr = std::shared_ptr<const UnitPlan>;

/// Takes seconds. `folders` hold the shop's tolerances and fixture. Throws units::BadInput.
[[nodiscard]] UnitPlanPtr unitPlan(design::DesignPtr design, std::shared_ptr<const catalog::Catalog> shop,
                                   const std::vector<std::string>& folders);

/// Keeps the plan that it knows alive.
struct UnitCauses {
    explicit UnitCauses(UnitPlanPtr of);
    UnitPlanPtr plan;
    learn::CauseFinder finder;
};
using UnitCausesPtr = std::shared_ptr<const UnitCauses>;

/// The name of a design's unit in records.
[[nodiscard]] std::string recordedPart(const design::Design& design);

}  // namespace bench
