// SPDX-License-Identifier: GPL-3.0-or-later
// The plan's expected gain and response against an independent circuit solver (ngspice, Debian package) on the netlist
// of the unit in the fixture.
#include "exchange/netlist.h"
#include "ngspice.h"
#include "plans.h"

namespace plan_ngspice_test {

/// Between ngspice's own frequencies, 40 a decade, straight over log f.
double levelAt(const std::vector<std::vector<double>>& rows, double f) {
    for (std::size_t k = 1; k < rows.size(); ++k) {
        if (rows[k][0] < f) continue;
        const double share = std::log(f / rows[k - 1][0]) / std::log(rows[k][0] / rows[k - 1][0]);
        return rows[k - 1][1] + share * (rows[k][1] - rows[k - 1][1]);
    }
    return std::nan("");
}

class PlanCircuit : public testing::TestWithParam<std::string> {};

TEST_P(PlanCircuit, GainAndResponseInTheFixtureAreNgspices) {
    const auto& made = plans::demo(GetParam());
    const auto& bench = made.state().bench.design;
    const auto answer = analysis::answer(bench, demos::shopCatalog());
    const auto rows = ngspice::rows(exchange::netlist(bench, *answer), "plan_" + GetParam());
    ASSERT_EQ(rows.size(), 201U);
    constexpr double agreed = 0.02;  // dB, with what is between two of ngspice's frequencies
    const double one = levelAt(rows, 1000);
    EXPECT_NEAR(made.row("gain_1kHz").expected.value(), one, agreed);
    int compared = 0;
    for (const auto& row : made.plan.stages.back().rows) {
        if (!row.name.starts_with("response.") || !row.expected) continue;
        const double f = std::stod(row.name.substr(9));
        if (f < 10) continue;  // ngspice's sweep begins there
        ++compared;
        EXPECT_NEAR(*row.expected, levelAt(rows, f) - one, agreed) << row.name;
    }
    EXPECT_GE(compared, 2);
}

INSTANTIATE_TEST_SUITE_P(Demos, PlanCircuit, testing::ValuesIn(plans::names()),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

}  // namespace plan_ngspice_test
