// SPDX-License-Identifier: GPL-3.0-or-later
// The spread by which limits are set, against units drawn at random: law of propagation against plain numbers.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "plans.h"
#include "shop/bench_prediction.h"
#include "spread/run.h"

namespace {

/// Half of the width that holds the middle 68.27 % of the units in which a column occurs: of normal ones the standard
/// deviation, whatever a few far ones do.
double middleWidth(const spread::Batch& batch, std::size_t column) {
    std::vector<double> values;
    for (const auto& unit : batch.values)
        if (!std::isnan(unit[column])) values.push_back(unit[column]);
    std::sort(values.begin(), values.end());
    const auto at = [&](double share) {
        return values.at(static_cast<std::size_t>(std::lround(share * static_cast<double>(values.size() - 1))));
    };
    constexpr double below = 0.15866;
    return (at(1 - below) - at(below)) / 2;
}

class DrawnUnits : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Demos, DrawnUnits, testing::ValuesIn(plans::names()),
                         [](const auto& one) { return "_" + std::to_string(one.index); });

// 400 plain random units would have a width within 6 % (one standard deviation of quantiles of normal units); these are
// spread evenly. A peak so flat that units move it by half of itself is beyond the first order.
TEST_P(DrawnUnits, SpreadAsTheLimitsOfThePlanSay) {
    const plans::Made& made = plans::demo(GetParam());
    const shop::BenchState& state = made.state();
    spread::Plan plan;
    plan.units = 400;
    plan.lotSize = 1;  // no two units of one lot
    for (const auto& [name, expected] : state.figures)
        if (name.starts_with("dcr.") || name.starts_with("leakage_10kHz.") || name == "low_3dB" ||
            name.starts_with("high_3dB_") || (name == "peak_frequency" && expected.tolerance < 0.3) ||
            name == "input_capacitance." + state.bench.driven)
            plan.wanted.figures.push_back(name);
    const spread::Study study(state.bench.design, demos::shopCatalog(), shop::benchTolerances(plans::tolerances()),
                              plan);
    const auto batch = study.run(0, plan.units);
    ASSERT_GE(study.columns().size(), 7u);
    for (std::size_t c = 0; c < study.columns().size(); ++c) {
        const shop::Expected& e = state.figures.at(study.columns()[c].name);
        const double drawn = shop::coverage * middleWidth(batch, c) / (e.relative ? std::abs(e.value) : 1);
        EXPECT_NEAR(e.tolerance / drawn, 1, 0.07) << study.columns()[c].name << ": " << e.tolerance << ", " << drawn;
    }
}

}  // namespace
