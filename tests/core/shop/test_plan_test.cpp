// SPDX-License-Identifier: GPL-3.0-or-later
// What every test plan has to say, whatever the design.
#include "shop/test_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "plans.h"
#include "shop/datasheet_parts.h"
#include "shop/paper_content.h"

namespace test_plan_test {

using plans::demo;
using plans::Made;
using shop::PlanRow;
using shop::TestOrder;

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

class EveryPlan : public testing::TestWithParam<std::string> {
protected:
    const Made& made = demo(GetParam());
};

TEST_P(EveryPlan, TakesAllDirectCurrentBeforeTheCoreIsDemagnetisedAndMeasuredAfterwards) {
    int step = 0;
    for (const auto& stage : made.plan.stages) {
        const auto& rows = stage.rows;
        EXPECT_TRUE(std::is_sorted(rows.begin(), rows.end(), [](const PlanRow& a, const PlanRow& b) {
            return a.order < b.order;
        })) << stage.name;
        for (const auto& row : rows) EXPECT_EQ(row.step, ++step);
        const auto firstOf = [&](const std::string& stem) {
            return std::find_if(rows.begin(), rows.end(), [&](const PlanRow& r) { return r.name.starts_with(stem); });
        };
        EXPECT_LT(firstOf("ratio."), firstOf("continuity."));
        EXPECT_LT(firstOf("continuity."), firstOf("dcr."));
        EXPECT_LT(firstOf("dcr."), firstOf("insulation."));
        const bool last = &stage == &made.plan.stages.back();
        EXPECT_EQ(firstOf("hipot.") != rows.end(), last) << "full voltage once, at the end";
        if (last) {
            EXPECT_LT(firstOf("insulation."), firstOf("hipot."));
        }
        const bool core = stage.name != "wound coil";
        EXPECT_EQ(std::count_if(rows.begin(), rows.end(), [](const auto& r) { return r.name == "demagnetise"; }),
                  core ? 1 : 0);
        EXPECT_EQ(std::any_of(rows.begin(), rows.end(), [](const auto& r) { return r.order == TestOrder::Signal; }),
                  core);
    }
}

TEST_P(EveryPlan, HasAContinuityRowForEachWindingInEachStage) {
    for (std::size_t k = 0; k < made.plan.stages.size(); ++k)
        for (const auto& winding : made.design.windings)
            EXPECT_NO_THROW((void)made.row("continuity." + winding.name, k));
}

TEST_P(EveryPlan, NoWindowIsInvertedOrNarrowerThanTheInstrument) {
    for (const auto& stage : made.plan.stages)
        for (const auto& row : stage.rows) {
            if (!row.low || !row.high) continue;
            EXPECT_LT(*row.low, *row.high) << row.what;
            if (row.kind == units::Kind::Decibel && !row.needed) {
                EXPECT_GE(*row.high - *row.low, 2 * made.fixture.doubts.level - 1e-12) << row.what;
            }
            EXPECT_EQ(row.needed.has_value(), has(row.doubt, "cannot judge") || has(row.doubt, "could")) << row.doubt;
        }
}

TEST_P(EveryPlan, APredictedUnitPassesItsOwnPlanUnlessAPromiseIsBroken) {
    for (const auto& stage : made.plan.stages)
        for (const auto& row : stage.rows) {
            if (!row.expected || has(row.doubt, "predicted to break") || has(row.origin, "promise") ||
                has(row.origin, "mask"))
                continue;
            if (row.low) {
                EXPECT_LE(*row.low, *row.expected) << row.what;
            }
            if (row.high) {
                EXPECT_GE(*row.high, *row.expected) << row.what;
            }
        }
}

TEST_P(EveryPlan, SaysEverythingInPlainWords) {
    for (const auto& stage : made.plan.stages)
        for (const auto& row : stage.rows) {
            EXPECT_EQ(row.what.find('_'), std::string::npos) << row.what;
            EXPECT_TRUE(row.what.front() >= 'A' && row.what.front() <= 'Z') << row.what;
            EXPECT_FALSE(row.hookUp.empty()) << row.what;
            EXPECT_FALSE(row.method.empty()) << row.what;
            EXPECT_FALSE(row.settings.empty()) << row.what;
            if (row.low || row.high) {
                EXPECT_FALSE(row.origin.empty()) << row.what;
            }
            // A row that measures without limits says why.
            if (row.order == TestOrder::Signal && !row.low && !row.high) {
                EXPECT_FALSE(row.doubt.empty()) << row.what;
            }
        }
}

TEST_P(EveryPlan, RejectionIsAtLeastAndBalanceHasLimitsOrAReason) {
    for (const char* name : {"rejection_1kHz", "rejection_20kHz", "output_balance_1kHz"}) {
        const PlanRow& row = made.row(name);
        EXPECT_FALSE(row.high) << name;
        const auto* figure = made.state().answer->figure(name);
        if (figure == nullptr) {
            EXPECT_TRUE(row.doubt.starts_with("not measured: ")) << row.doubt;
            continue;
        }
        ASSERT_TRUE(row.low) << name;
        EXPECT_LT(*row.low, 80);
        if (figure->value >= 80) {
            EXPECT_TRUE(row.origin.starts_with("predicted over 80 dB")) << row.origin;
        }
    }
}

TEST_P(EveryPlan, InductanceLeakageAndCapacitanceHoldModelAndSpread) {
    int seen = 0;
    for (const auto& row : made.plan.stages.back().rows) {
        const bool inductance = row.name.starts_with("inductance_") || row.name.starts_with("leakage_");
        if (!inductance && !row.name.starts_with("capacitance.")) continue;
        const shop::Expected& e = made.state().figures.at(row.name);
        EXPECT_GT(e.model, 0.05) << row.name;
        EXPECT_GT(e.tolerance, 0.005) << row.name;
        const auto& doubt = inductance ? made.fixture.doubts.inductance : made.fixture.doubts.capacitance;
        const double width = 1 + std::hypot(e.model, e.tolerance), guard = doubt.at(e.value);
        if (row.needed) continue;
        EXPECT_NEAR(*row.low, e.value / width + guard, 1e-9 * e.value) << row.name;
        EXPECT_NEAR(*row.high, e.value * width - guard, 1e-9 * e.value) << row.name;
        ++seen;
    }
    EXPECT_GE(seen, 4);
}

TEST_P(EveryPlan, EveryPromiseIsProvedOrListedAsNotTested) {
    for (const auto& promise : made.design.brief.promises) {
        const bool listed = std::any_of(made.plan.untested.begin(), made.plan.untested.end(), [&](const auto& words) {
            return words.starts_with(shop::figureWords(promise.figure));
        });
        if (listed) continue;
        bool proved = false;
        for (const auto& row : made.plan.stages.back().rows)
            proved = proved || has(row.origin, "promised") || has(row.method, "promised");
        EXPECT_TRUE(proved) << promise.figure;
    }
}

TEST_P(EveryPlan, TheTableForASequencerHasALineARow) {
    const std::string csv = shop::limitsCsv(made.plan);
    EXPECT_TRUE(csv.starts_with("step,stage,test,name,settings,low,high,unit\n"));
    std::size_t rows = 0;
    for (const auto& stage : made.plan.stages) rows += stage.rows.size();
    EXPECT_EQ(static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n')), rows + 1);
    const auto content = shop::contentOf(made.plan);
    EXPECT_EQ(content.at("stages").size(), made.plan.stages.size());
}

INSTANTIATE_TEST_SUITE_P(Demos, EveryPlan, testing::ValuesIn(plans::names()), [](const auto& one) {
    std::string name = one.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

}  // namespace test_plan_test
