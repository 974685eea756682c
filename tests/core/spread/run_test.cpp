// SPDX-License-Identifier: GPL-3.0-or-later
// Units of a small design: closed forms of linear cases, plain random numbers, threads, parts, and a stop.
#include "spread/run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "coil/coil_build.h"
#include "promising.h"
#include "spread/summary.h"
#include "units/fault.h"

namespace run_test {

/// R is proportional to the stretch factor and to 1 + alpha (T - 20): two factors of one product.
TEST(Spread, OfAProductIsTheRootOfTheSumOfSquares) {
    design::Design d = small::transformer();
    d.windings[0].resistanceFactor.tolerance = units::Tolerance{0.04, true, "normal"};
    d.conditions.temperature.tolerance = units::Tolerance{10, false, "uniform"};
    const spread::Study study(d, shop(), {}, planOf(2048, {"dcr.P"}));
    ASSERT_EQ(study.variation().all.size(), 2U);
    const auto batch = study.run(0, 2048);
    const double nominal = *study.columns()[0].nominal;
    const double stretch = 0.02, warm = 0.00393 * 10 / std::sqrt(3);
    // Of a product of independent factors: (1 + s1^2)(1 + s2^2) - 1.
    const double expected = std::sqrt((1 + stretch * stretch) * (1 + warm * warm) - 1);
    EXPECT_NEAR(mean(batch, 0), nominal, 1e-4 * nominal);
    EXPECT_NEAR(deviation(batch, 0), expected * nominal, 3e-3 * expected * nominal);
}

/// R d^2 / (mean turn) does not vary, and of 1/d^2 the mean is 1 + 3 s^2 and the variance 4 s^2 (1 + ...) in lowest
/// orders; the turn's length follows the layout, taken from the coil alone.
TEST(Spread, OfResistanceByTheWiresDiameter) {
    catalog::Tolerances only{{"wire_diameter", usual().at("wire_diameter")}};
    auto plan = planOf(2048, {"dcr.P"});
    plan.lotSize = 1;
    const spread::Study study(small::transformer(), shop(), only, plan);
    ASSERT_EQ(study.variation().all.size(), 1U);
    const double s = 3e-6 / 2 / small::bare;
    const auto turn = [](double bare) {
        auto parts = shop();
        parts.wires["wire"].bareDiameter = bare;
        parts.wires["wire"].overallDiameter = bare + small::overall - small::bare;
        auto d = small::transformer();
        d.coil[0].order[0].section()->turnsPerLayer = 188;
        return coil::layOut(d, parts).layers.front().turnLength;
    };
    const double step = 1e-7, slope = (std::log(turn(small::bare + step)) - std::log(turn(small::bare - step))) /
                                      (2 * step) * small::bare;
    const double power = 2 - slope;  // R goes as d^-power near the nominal
    const auto batch = study.run(0, 2048);
    const double nominal = *study.columns()[0].nominal;
    const double chance = power * s / std::sqrt(2048.0);  // of plain random numbers; evenly spread ones do better
    EXPECT_NEAR(mean(batch, 0) / nominal - 1, power * (power + 1) / 2 * s * s, chance / 8);
    EXPECT_NEAR(deviation(batch, 0) / nominal, power * s, 3e-3 * power * s);
}

/// The same units drawn with a library's random numbers: means agree within their confidence interval (four standard
/// errors), so do yields.
TEST(Spread, AgreesWithPlainRandomSampling) {
    constexpr std::uint64_t count = 256;
    auto plan = planOf(count, {});
    plan.lotSize = 1;
    const spread::Study study(promising(), shop(), usual(), plan);
    const auto batch = study.run(0, count);
    const auto& all = study.variation().all;
    std::mt19937_64 random(5);
    std::normal_distribution<double> normal;
    spread::Batch plain;
    spread::UnitDesign unit(study.variation());
    const analysis::Alike alike(*study.variation().base, shop(), {});
    for (std::uint64_t k = 0; k < count; ++k) {
        std::map<std::string, double> lots;
        std::vector<double> z;
        for (const auto& v : all) {
            const auto key = v.lot.empty() ? v.name : v.lot;
            if (!lots.contains(key)) lots[key] = normal(random);
            z.push_back(std::sqrt(v.lotShare) * lots[key] + std::sqrt(1 - v.lotShare) * normal(random));
        }
        plain.values.push_back(alike.found(unit.deviating(z)).values);
    }
    for (std::size_t c = 0; c < study.columns().size(); ++c) {
        const double error = std::hypot(deviation(plain, c), deviation(batch, c)) / std::sqrt(double(count));
        EXPECT_NEAR(mean(batch, c), mean(plain, c), 4 * error) << study.columns()[c].name;
        EXPECT_GT(deviation(batch, c), 0) << study.columns()[c].name;
        // A standard deviation of n normal values is known to 1 / sqrt(2 n); these are near normal.
        EXPECT_NEAR(deviation(batch, c) / deviation(plain, c), 1, 6 / std::sqrt(2.0 * count))
            << study.columns()[c].name;
    }
}

TEST(Spread, IsTheSameOnAnyNumberOfThreadsAndInAnyParts) {
    auto plan = planOf(40, {"fill"});
    plan.wanted.response = {20, 1000, 20000};
    plan.lotSize = 7;
    const spread::Study study(promising(), shop(), usual(), plan);
    const auto whole = study.run(0, 40, {}, {}, 1);
    EXPECT_EQ(study.run(0, 40, {}, {}, 3), whole);
    std::vector<spread::Batch> parts;
    for (std::uint64_t k = 1; k <= 3; ++k) {
        const auto range = spread::partOf(40, k, 3);
        parts.push_back(study.run(range.first, range.last, {}, {}, 2));
    }
    EXPECT_EQ(parts[0].first, 0U);
    EXPECT_EQ(parts[2].last, 40U);
    spread::Batch joined = parts[0];
    joined.last = 40;
    for (std::size_t k = 1; k < 3; ++k) {
        EXPECT_EQ(parts[k].first, parts[k - 1].last);
        joined.values.insert(joined.values.end(), parts[k].values.begin(), parts[k].values.end());
        joined.kept.insert(joined.kept.end(), parts[k].kept.begin(), parts[k].kept.end());
        for (std::size_t f = 0; f < 3; ++f)
            for (const auto& [bin, units] : parts[k].response[f]) joined.response[f][bin] += units;
    }
    EXPECT_EQ(joined, whole);
    std::uint64_t counted = 0;
    for (const auto& [bin, units] : whole.response[0]) counted += units;
    EXPECT_EQ(counted, 40U);
    EXPECT_EQ(whole.response[1].begin()->first, 0);  // re 1 kHz
}

TEST(Spread, StopsWhenToldAndTellsHowFarItIs) {
    const spread::Study study(promising(), shop(), usual(), planOf(1000, {}));
    std::stop_source stop;
    std::uint64_t seen = 0;
    const auto batch = study.run(0, 1000, stop.get_token(), [&](std::uint64_t done) {
        EXPECT_GT(done, seen);
        seen = done;
        if (done >= 8) stop.request_stop();
    });
    EXPECT_TRUE(batch.stopped);
    EXPECT_GE(seen, 8U);
    EXPECT_LT(seen, 500U);
}

TEST(Spread, YieldsAndLimitsFollowTheUnits) {
    const auto d = promising();
    const spread::Study study(d, shop(), usual(), planOf(320, {}));
    const auto batch = study.run(0, 320);
    const auto head = spread::headOf(d, "digest", "program", study);
    const auto all = spread::summed(head, {batch});
    ASSERT_EQ(all.columns.size(), 4U);
    std::size_t kept = 0;
    for (std::size_t c = 0; c < 3; ++c) {
        const auto& sum = all.columns[c];
        std::size_t within = 0;
        for (const auto& unit : batch.values)
            within +=
                (!head.atLeast[c] || unit[c] >= *head.atLeast[c]) && (!head.atMost[c] || unit[c] <= *head.atMost[c])
                    ? 1U
                    : 0U;
        EXPECT_EQ(sum.yield->kept, within);
        EXPECT_EQ(sum.yield->judged, 320U);
        EXPECT_EQ(sum.limits.low.has_value(), head.atLeast[c].has_value());
        EXPECT_EQ(sum.limits.high.has_value(), head.atMost[c].has_value());
        EXPECT_GE(sum.limits.reached, 0.95);
        EXPECT_NEAR(sum.quantiles[3], sum.mean, sum.deviation);
    }
    for (const auto& letters : batch.kept) kept += letters.find('b') == std::string::npos ? 1U : 0U;
    EXPECT_EQ(all.together->kept, kept);
}

TEST(Spread, KeepsTurnsALayerAsTheWindingSheetSays) {
    const spread::Study study(promising(), shop(), usual(), planOf(1, {}));
    const auto* section = study.variation().base->coil[0].order[0].section();
    EXPECT_EQ(section->turnsPerLayer, 188);
}

TEST(Spread, TheDesignsOwnToleranceRules) {
    auto d = promising();
    d.core.height.tolerance = units::Tolerance{0.001, true, "triangular"};
    const auto variation = spread::variationOf(d, shop(), usual());
    int found = 0;
    for (const auto& v : variation.all)
        if (v.place == "/core/height") {
            ++found;
            EXPECT_EQ(v.law.kind, catalog::Law::Triangular);
            EXPECT_EQ(v.law.halfWidth, 0.001);
            EXPECT_EQ(v.status, "this design");
        }
    EXPECT_EQ(found, 1);
}

TEST(Spread, AFigureThatIsNoneIsRefused) {
    EXPECT_THROW(spread::Study(promising(), shop(), usual(), planOf(1, {"dcr.Q"})), units::BadInput);
}

}  // namespace run_test
