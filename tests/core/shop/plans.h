// SPDX-License-Identifier: GPL-3.0-or-later
// Test plans of the demo designs, each made once.
#pragma once

#include <map>
#include <stdexcept>

#include "demos.h"
#include "exchange/fixture_file.h"
#include "exchange/load_tolerances.h"
#include "shop/test_plan.h"

namespace plans {

inline design::Fixture bench() {
    const std::string path = COILWRIGHT_SOURCE_DIR "/resources/fixtures/bench.json";
    return exchange::readFixture(exchange::readFile(path), path);
}
inline const catalog::Tolerances& tolerances() {
    static const catalog::Tolerances one = exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"});
    return one;
}

/// A plan with all that it was made from.
struct Made {
    design::Design design;
    design::Fixture fixture;
    analysis::AnswerPtr answer;
    shop::PlanPrediction prediction;
    shop::TestPlan plan;

    [[nodiscard]] const shop::PlanRow& row(const std::string& name, std::size_t fromLast = 0) const {
        const auto& stage = plan.stages.at(plan.stages.size() - 1 - fromLast);
        for (const auto& one : stage.rows)
            if (one.name == name) return one;
        throw std::out_of_range(name);
    }
    [[nodiscard]] const shop::BenchState& state() const { return prediction.states.back(); }
};
inline Made made(const design::Design& design, const design::Fixture& fixture = bench(),
                 const catalog::Tolerances& varying = tolerances(), const std::string& date = "2026-11-27") {
    Made all{design, fixture, analysis::answer(design, demos::shopCatalog()), {}, {}};
    all.prediction = shop::planPrediction(design, all.answer, demos::shopCatalog(), varying, fixture);
    all.plan = shop::testPlan(design, *all.answer, all.prediction, demos::shopCatalog(), fixture,
                              {date, std::string(64, 'a')});
    return all;
}
inline const std::vector<std::string>& names() {
    static const std::vector<std::string> all{"direct-box", "line-unit", "microphone-input", "ribbon-step-up",
                                              "splitter"};
    return all;
}
inline const Made& demo(const std::string& name) {
    static std::map<std::string, Made> all;
    const auto at = all.find(name);
    return at != all.end() ? at->second : all.emplace(name, made(demos::demo(name))).first->second;
}

}  // namespace plans
