// SPDX-License-Identifier: GPL-3.0-or-later
// What readings of good units are, against the spread by which the plan sets its limits (drawn units:
// shop/bench_spread).
#include "learn/reading_model.h"

#include <gtest/gtest.h>

#include <cmath>

#include "plans.h"

namespace reading_model_test {

// Interlayers and enamel of one lot move many sections of this unit together.
TEST(ReadingModel, SpreadsAsThePlanSays) {
    const plans::Made& made = plans::demo("line-unit");
    const auto model = learn::readingModel(made.design, made.prediction, made.plan, demos::shopCatalog(),
                                           plans::tolerances(), made.fixture);
    const learn::Matrix spread = model.spread();
    int seen = 0;
    for (std::size_t k = 0; k < model.probes.size(); ++k) {
        const auto& probe = model.probes[k];
        const auto figure = made.state().figures.find(probe.name);
        if (figure == made.state().figures.end() || !figure->second.relative) continue;
        if (probe.kind != learn::ProbeKind::Resistance && probe.kind != learn::ProbeKind::Leakage) continue;
        const auto row = static_cast<Eigen::Index>(k);
        const double width = shop::coverage * std::sqrt(spread(row, row));  // in logarithms
        EXPECT_NEAR(width / figure->second.tolerance, 1, 0.05) << probe.name;
        ++seen;
    }
    EXPECT_GE(seen, 8);
}

}  // namespace reading_model_test
