// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/unit_plan.h"

#include "analysis/answer.h"
#include "exchange/design_json.h"
#include "exchange/fixture_file.h"
#include "exchange/load_tolerances.h"
#include "exchange/read_file.h"
#include "papers/datasheet.h"

namespace bench {

UnitPlanPtr unitPlan(design::DesignPtr design, std::shared_ptr<const catalog::Catalog> shop,
                     const std::vector<std::string>& folders) {
    auto all = std::make_shared<UnitPlan>();
    all->design = std::move(design);
    all->shop = std::move(shop);
    all->part = recordedPart(*all->design);
    const std::string file = exchange::fixtureFile(folders);
    all->fixture = exchange::readFixture(exchange::readFile(file), file);
    all->tolerances = exchange::loadTolerances(folders);
    const auto answer = analysis::answer(*all->design, *all->shop);
    all->prediction = shop::planPrediction(*all->design, answer, *all->shop, all->tolerances, all->fixture);
    all->plan = shop::testPlan(*all->design, *answer, all->prediction, *all->shop, all->fixture,
                               {papers::paperDate(), exchange::digestOf(*all->design, *all->shop), {}});
    return all;
}

UnitCauses::UnitCauses(UnitPlanPtr of)
    : plan(std::move(of)),
      finder(*plan->design, plan->prediction, plan->plan, *plan->shop, plan->tolerances, plan->fixture) {}

std::string recordedPart(const design::Design& design) {
    return design.partNumber.empty() ? design.name : design.partNumber;
}

}  // namespace bench
