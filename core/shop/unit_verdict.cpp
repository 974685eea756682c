// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/unit_verdict.h"

#include <array>
#include <cmath>
#include <utility>

#include "units/fault.h"
#include "units/figure.h"
#include "units/text.h"

namespace shop {

namespace {

constexpr std::array<std::pair<const char*, const char*>, 2> stageNames{
    {{"wound coil", "wound"}, {"filled", "potted"}}};  // in the plan, in records

double answerAt(const PlanRow& row, const std::string& typed) {
    if (typed == "yes" || typed == "y") return 1;
    if (typed == "no" || typed == "n") return 0;
    units::refuse(row.name, '"' + typed + '"', "yes or no");
}

/// What a number of a row is multiplied by in records.
double recordFactor(const PlanRow& row) noexcept {
    return row.kind == units::Kind::Share ? 100 : 1;
}
std::string recordUnit(const PlanRow& row) {
    return row.kind == units::Kind::Share ? "%" : std::string(units::unit(row.kind));
}

}  // namespace

Asked asked(const PlanRow& row) noexcept {
    if (row.expected || row.low || row.high) return Asked::Reading;
    if (row.order == TestOrder::Signal || row.name.starts_with("hipot.")) return Asked::Nothing;
    return Asked::Answer;
}

RowVerdict rowVerdict(const PlanRow& row, std::optional<double> reading) noexcept {
    if (!reading) return RowVerdict::Open;
    if (asked(row) == Asked::Answer) return *reading > 0 ? RowVerdict::Pass : RowVerdict::Fail;
    if (!row.low && !row.high) return RowVerdict::Taken;
    const bool kept = (!row.low || *reading >= *row.low) && (!row.high || *reading <= *row.high);
    return kept ? RowVerdict::Pass : RowVerdict::Fail;
}

double readAt(const PlanRow& row, const std::string& typed) {
    if (asked(row) == Asked::Answer) return answerAt(row, typed);
    try {
        return units::read(row.kind, typed);
    } catch (const units::BadInput& bad) {
        units::Fault fault = bad.faults.front();
        fault.place = row.name;
        throw units::BadInput(std::move(fault));
    }
}

UnitVerdict unitVerdict(const PlanStage& stage, const std::vector<std::optional<double>>& readings) {
    UnitVerdict all;
    for (std::size_t k = 0; k < stage.rows.size(); ++k) {
        const PlanRow& row = stage.rows[k];
        if (asked(row) == Asked::Nothing) continue;
        const RowVerdict one = rowVerdict(row, k < readings.size() ? readings[k] : std::nullopt);
        if (one == RowVerdict::Fail) all.failed.push_back(k);
        if (one == RowVerdict::Open) all.open.push_back(k);
    }
    if (!all.failed.empty())
        all.verdict = RowVerdict::Fail;
    else if (all.open.empty() && !stage.rows.empty())
        all.verdict = RowVerdict::Pass;
    return all;
}

RecordedNumber recorded(const PlanRow& row, double reading) {
    if (asked(row) == Asked::Answer) return {row.name + ".yes", "", reading};
    return {row.name, recordUnit(row), recordFactor(row) * reading};
}

std::optional<RecordedLimits> recordedLimits(const TestPlan& plan, const std::string& test, const std::string& stage) {
    const std::string name = units::dotted(test), planned = plannedStage(stage);
    for (auto at = plan.stages.rbegin(); at != plan.stages.rend(); ++at) {
        if (!stage.empty() && at->name != planned) continue;
        for (const PlanRow& row : at->rows) {
            if (units::dotted(row.name) != name || (!row.low && !row.high)) continue;
            RecordedLimits limits{row.low, row.high, recordUnit(row)};
            for (auto* limit : {&limits.low, &limits.high})
                if (*limit) **limit *= recordFactor(row);
            return limits;
        }
    }
    return {};
}

std::string recordedStage(const std::string& planned) {
    for (const auto& [inPlan, inRecords] : stageNames)
        if (planned == inPlan) return inRecords;
    return planned;
}

std::string plannedStage(const std::string& recorded) {
    for (const auto& [inPlan, inRecords] : stageNames)
        if (recorded == inRecords) return inPlan;
    return recorded;
}

}  // namespace shop
