// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/trace_csv.h"

#include "units/csv_cell.h"

#include <gtest/gtest.h>

#include <cmath>

namespace trace_csv_test {

TEST(TraceCsv, HasOneColumnACurveAndOneLineAFrequency) {
    analysis::Trace trace;
    trace.frequency = {0.1, 20000};
    trace.curves = {{"maximum_level_dBu", "", units::Kind::LevelDbu, "dBu", {1.25, NAN}, false, {}},
                    {"limit", "", units::Kind::Number, "", {}, false, {"core", "source, \"full\""}}};
    EXPECT_EQ(plots::traceCsv(trace),
              "frequency_Hz,maximum_level_dBu,limit\n"
              "0.1," +
                  units::csvCell(1.25) +
                  ",core\n"
                  "20000,,\"source, \"\"full\"\"\"\n");
}

TEST(TraceCsv, WritesNumbersWithAPointAndNineDigits) {
    EXPECT_EQ(std::stold(units::csvCell(-13.97940008672)), -13.9794001L);
    EXPECT_EQ(units::csvCell(INFINITY), "");
}

}  // namespace trace_csv_test
