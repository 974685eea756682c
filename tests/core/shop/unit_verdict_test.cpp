// SPDX-License-Identifier: GPL-3.0-or-later
// Readings held against a plan: each row by its limits, a unit by all its rows.
#include "shop/unit_verdict.h"

#include <gtest/gtest.h>

#include "exchange/limits_file.h"
#include "plans.h"
#include "units/fault.h"

namespace unit_verdict_test {

using shop::Asked;
using shop::RowVerdict;

const shop::TestPlan& plan() {
    return plans::demo("microphone-input").plan;
}

/// Of every row what a unit reads that is as expected, or within its limit.
std::vector<std::optional<double>> good(const shop::PlanStage& stage) {
    std::vector<std::optional<double>> all;
    for (const auto& row : stage.rows) {
        if (shop::asked(row) == Asked::Nothing)
            all.emplace_back();
        else if (shop::asked(row) == Asked::Answer)
            all.emplace_back(1);
        else
            all.push_back(row.low && row.high ? (*row.low + *row.high) / 2
                          : row.low           ? *row.low
                          : row.high          ? *row.high
                                              : row.expected);
    }
    return all;
}

TEST(UnitVerdict, LimitsBelongToWhatIsAllowed) {
    const auto& row = plans::demo("microphone-input").row("dcr.P");
    ASSERT_TRUE(row.low && row.high);
    EXPECT_EQ(shop::rowVerdict(row, {}), RowVerdict::Open);
    EXPECT_EQ(shop::rowVerdict(row, row.low), RowVerdict::Pass);
    EXPECT_EQ(shop::rowVerdict(row, row.high), RowVerdict::Pass);
    EXPECT_EQ(shop::rowVerdict(row, *row.low * (1 - 1e-9)), RowVerdict::Fail);
    EXPECT_EQ(shop::rowVerdict(row, *row.high * (1 + 1e-9)), RowVerdict::Fail);
    // A ratio of the wrong sign is a winding the wrong way round.
    const auto& ratio = plans::demo("microphone-input").row("ratio.P.S");
    EXPECT_EQ(shop::rowVerdict(ratio, ratio.expected), RowVerdict::Pass);
    EXPECT_EQ(shop::rowVerdict(ratio, -*ratio.expected), RowVerdict::Fail);
}

TEST(UnitVerdict, AUnitPassesOnlyWhenAllThatIsAskedWasReadAndFailsByOneRow) {
    for (const auto& name : plans::names())
        for (const auto& stage : plans::demo(name).plan.stages) {
            auto readings = good(stage);
            EXPECT_EQ(shop::unitVerdict(stage, {}).verdict, RowVerdict::Open) << name;
            EXPECT_EQ(shop::unitVerdict(stage, readings).verdict, RowVerdict::Pass) << name << ", " << stage.name;
            for (std::size_t k = 0; k < readings.size(); ++k) {
                if (!readings[k]) continue;
                const auto before = readings[k];
                readings[k].reset();
                EXPECT_EQ(shop::unitVerdict(stage, readings).verdict, RowVerdict::Open) << stage.rows[k].name;
                EXPECT_EQ(shop::unitVerdict(stage, readings).open, std::vector<std::size_t>{k});
                readings[k] = stage.rows[k].high ? *stage.rows[k].high + 1e3 : -1e15;
                if (shop::rowVerdict(stage.rows[k], 0) != RowVerdict::Taken) {
                    EXPECT_EQ(shop::unitVerdict(stage, readings).verdict, RowVerdict::Fail) << stage.rows[k].name;
                    EXPECT_EQ(shop::unitVerdict(stage, readings).failed, std::vector<std::size_t>{k});
                }
                readings[k] = before;
            }
        }
}

TEST(UnitVerdict, AVoltageTestWithoutASettledVoltageIsNotAsked) {
    const auto& unsettled = plans::demo("splitter");
    int voltageRows = 0;
    for (const auto& row : unsettled.plan.stages.back().rows)
        if (row.name.starts_with("hipot.")) {
            EXPECT_EQ(shop::asked(row), Asked::Nothing) << row.name;
            ++voltageRows;
        }
    EXPECT_GT(voltageRows, 0);
    for (const auto& row : plan().stages.back().rows)
        if (row.name.starts_with("hipot.")) {
            EXPECT_EQ(shop::asked(row), Asked::Reading) << row.name;
        }
    EXPECT_EQ(shop::asked(plans::demo("microphone-input").row("demagnetise")), Asked::Answer);
}

TEST(UnitVerdict, WhatWasTypedIsReadInTheRowsKind) {
    const auto& row = plans::demo("microphone-input").row("dcr.P");
    EXPECT_DOUBLE_EQ(shop::readAt(row, "4.7k"), 4700);
    EXPECT_DOUBLE_EQ(shop::readAt(row, "0,12"), 0.12);
    const auto& done = plans::demo("microphone-input").row("demagnetise");
    EXPECT_EQ(shop::readAt(done, "yes"), 1);
    EXPECT_EQ(shop::readAt(done, "n"), 0);
    const auto why = [](const shop::PlanRow& at, const char* typed) -> std::string {
        try {
            (void)shop::readAt(at, typed);
        } catch (const units::BadInput& bad) {
            return bad.what();
        }
        return "";
    };
    EXPECT_EQ(why(done, "4.7"), "demagnetise: found \"4.7\"; allowed is yes or no.");
    EXPECT_EQ(why(row, "3 kg").substr(0, 6), "dcr.P:") << why(row, "3 kg");
}

TEST(UnitVerdict, RecordsAreNamedAndLimitedAsTheTableOfLimitsSays) {
    const auto limits = exchange::readLimits(shop::limitsCsv(plan()), "limits.csv");
    int held = 0, percent = 0;
    for (const auto& stage : plan().stages)
        for (const auto& row : stage.rows) {
            const auto told = shop::recordedLimits(plan(), row.name, shop::recordedStage(stage.name));
            const auto* table = exchange::limitOf(limits, row.name, stage.name);
            ASSERT_EQ(told.has_value(), table != nullptr) << row.name;
            if (!told) continue;
            const double reading = row.low ? *row.low : *row.high;
            const auto kept = shop::recorded(row, reading);
            EXPECT_EQ(kept.test, row.name);
            EXPECT_EQ(kept.unit, table->unit) << row.name;
            EXPECT_EQ(told->unit, table->unit) << row.name;
            EXPECT_NEAR(kept.value, table->low ? *table->low : *table->high, 1e-8 * std::abs(kept.value)) << row.name;
            ++held;
            percent += kept.unit == "%" ? 1 : 0;
        }
    EXPECT_GT(held, 20);
    EXPECT_GT(percent, 0);
    const auto done = shop::recorded(plans::demo("microphone-input").row("demagnetise"), 1);
    EXPECT_EQ(done, (shop::RecordedNumber{"demagnetise.yes", "", 1}));
}

TEST(UnitVerdict, StagesHaveTheNamesOfRecords) {
    EXPECT_EQ(shop::recordedStage("wound coil"), "wound");
    EXPECT_EQ(shop::recordedStage("laminated"), "laminated");
    EXPECT_EQ(shop::recordedStage("filled"), "potted");
    for (const char* stage : {"wound coil", "laminated", "filled"})
        EXPECT_EQ(shop::plannedStage(shop::recordedStage(stage)), stage);
    EXPECT_EQ(shop::plannedStage("return"), "return");
}

}  // namespace unit_verdict_test
