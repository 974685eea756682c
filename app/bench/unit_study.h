// SPDX-License-Identifier: GPL-3.0-or-later
// What the records that a filter means say together: counts, causes, and of one test its distribution and chart.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bench/unit_plan.h"
#include "measured/control_chart.h"
#include "measured/statistics.h"
#include "records/store.h"
#include "shop/unit_verdict.h"
#include "spread/summary.h"

namespace bench {

struct StudyAsked {
    std::string file;
    records::Filter filter;
    std::string test;  ///< "" or one that the records do not have: the first
    UnitPlanPtr plan;  ///< its limits hold for records of its part; null: none
};

/// Of one test.
struct TestStudy {
    std::string test;
    records::Series series;                        ///< in order of time
    spread::ColumnSummary summary;                 ///< with the histogram
    std::optional<measured::Distribution> spread;  ///< of two readings or more
    std::optional<measured::ControlChart> chart;   ///< likewise, single values
    std::optional<shop::RecordedLimits> limits;    ///< of the plan, in the readings' unit
    std::optional<measured::Capability> capability;
};

struct UnitStudy {
    records::Counts counts;
    std::vector<std::int64_t> numbers;  ///< of the records, newest first
    std::vector<measured::Share> causes;
    std::vector<std::pair<std::string, std::string>> tests;  ///< names and units
    std::optional<TestStudy> test;
};
using UnitStudyPtr = std::shared_ptr<const UnitStudy>;

/// Opens the file itself, so that it can run in a thread of its own. Throws units::BadInput and records::RecordsFailed.
[[nodiscard]] UnitStudyPtr unitStudy(const StudyAsked& asked);

}  // namespace bench
