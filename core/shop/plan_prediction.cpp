// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "shop/plan_rows.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string dbu(double level) {
    return units::write(units::Kind::LevelDbu, level, 3);
}

/// The level that the brief promises at 20 Hz, at its own point; nothing if it promises none.
std::optional<double> promisedLevel(const design::Brief& brief) {
    std::optional<double> level;
    for (const auto& promise : brief.promises) {
        if (!promise.atLeast || !promise.hookUp.empty()) continue;
        if (promise.figure == "maximum_level_20Hz") level = std::max(level.value_or(-1e9), *promise.atLeast);
        if (promise.figure == "headroom_20Hz")
            level = std::max(level.value_or(-1e9), *promise.atLeast + brief.operatingLevel);
    }
    return level;
}

/// EMF on the bench that brings the core where the customer's level brings it: moved as the level that the core takes
/// moves.
double benchLevel(const design::Design& design, const analysis::Answer& there, const analysis::Answer& here,
                  const design::Fixture& fixture, std::string& words) {
    const auto promised = promisedLevel(design.brief);
    const double wanted = promised.value_or(design.brief.operatingLevel);
    words = joined({promised ? "At the promised greatest level, " : "At the operating level, ", dbu(wanted),
                    " at the customer's"});
    const auto *a = there.figure("maximum_level_20Hz"), *b = here.figure("maximum_level_20Hz");
    double level = wanted;
    if (a != nullptr && b != nullptr && std::isfinite(a->value) && std::isfinite(b->value)) {
        level += b->value - a->value;
        words += joined({", which takes ", dbu(level), " EMF here."});
    } else {
        words += "; what that is in the fixture is not known, the same EMF is taken.";
    }
    if (level > fixture.generator.level) {
        level = fixture.generator.level;
        words += joined({" The generator gives no more than ", dbu(level), ": the promise itself is not proved."});
    }
    return level;
}

}  // namespace

PlanPrediction planPrediction(const design::Design& design, const analysis::AnswerPtr& answer,
                              const catalog::Catalog& shop, const catalog::Tolerances& tolerances,
                              const design::Fixture& fixture) {
    PlanPrediction prediction;
    auto& question = prediction.question;
    question.response = responsePoints(design, fixture);
    for (const double f : {20.0, 30.0, 50.0})
        if (f >= fixture.generator.lowest && f <= fixture.generator.highest) question.distortion.push_back(f);
    Bench last = benchOf(design, fixture, true);
    const auto here = hookUpAnswer(last.design, last.design.hookUps.front(), shop, answer).answer;
    question.level = benchLevel(design, *answer, *here, fixture, prediction.levelWords);
    const BenchSpread spread = benchSpread(last, shop, tolerances, question, here);
    if (design.filling)
        prediction.states.push_back(benchState(benchOf(design, fixture, false), shop, spread, question, here));
    prediction.states.push_back(benchState(std::move(last), shop, spread, question, here));
    return prediction;
}

}  // namespace shop
