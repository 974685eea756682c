// SPDX-License-Identifier: GPL-3.0-or-later
// The readings of one unit held against the rows of its test plan.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/test_plan.h"

namespace shop {

/// What a row asks of whoever tests.
enum class Asked {
    Reading,  ///< a number
    Answer,   ///< yes or no
    Nothing   ///< nothing is read: not predicted here, or a voltage test whose voltage is not settled
};
[[nodiscard]] Asked asked(const PlanRow& row) noexcept;

/// How a reading stands to its row. Limits belong to what is allowed.
enum class RowVerdict {
    Open,   ///< not read
    Taken,  ///< read; the row has no limits
    Pass,
    Fail
};
/// `reading` is in SI units; of an answer 1 is yes and 0 no.
[[nodiscard]] RowVerdict rowVerdict(const PlanRow& row, std::optional<double> reading) noexcept;

/// Reads what was typed at a row: a quantity of its kind as `units::read` takes it, or "yes", "no", "y", "n". Throws
/// units::BadInput, place the row's name.
[[nodiscard]] double readAt(const PlanRow& row, const std::string& typed);

/// A unit at one stage: `Fail` where any row failed, `Pass` where all that is asked was read and none failed.
struct UnitVerdict {
    RowVerdict verdict = RowVerdict::Open;
    std::vector<std::size_t> failed, open;  ///< rows
};
/// A reading a row, in the order of the stage.
[[nodiscard]] UnitVerdict unitVerdict(const PlanStage& stage, const std::vector<std::optional<double>>& readings);

/// A number as unit records keep it: SI, distortion in per cent as in the table of limits. An answer is a test of its
/// own, "demagnetise.yes", so that it never stands among readings.
struct RecordedNumber {
    std::string test, unit;
    double value = 0;
    bool operator==(const RecordedNumber&) const = default;
};
[[nodiscard]] RecordedNumber recorded(const PlanRow& row, double reading);

/// The limits of a recorded test in the record's unit.
struct RecordedLimits {
    std::optional<double> low, high;
    std::string unit;
    bool operator==(const RecordedLimits&) const = default;
};
/// Those of a stage as records name it; with "" of the last stage that limits the test. Blanks and dots in a test's
/// name are alike. Nothing: no limits.
[[nodiscard]] std::optional<RecordedLimits> recordedLimits(const TestPlan& plan, const std::string& test,
                                                           const std::string& stage);

/// A stage of the plan as unit records name it ("wound", "laminated", "potted"), and back; other names stay.
[[nodiscard]] std::string recordedStage(const std::string& planned);
[[nodiscard]] std::string plannedStage(const std::string& recorded);

}  // namespace shop
