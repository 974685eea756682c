// SPDX-License-Identifier: GPL-3.0-or-later
// Capability, causes, drift and signals against closed forms, SciPy and random units.
#include "measured/statistics.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>

#include "measured/control_chart.h"

namespace statistics_test {

using measured::capability;
using measured::Sample;
using measured::Signal;

Sample sample(std::size_t n, double mean, double deviation) {
    return {n, mean, deviation, mean - deviation, mean + deviation};
}

TEST(Capability, IntervalOfCpkIsWithinAPercentOfTheExactOne) {
    // SciPy 1.10.1: limits c with stats.nct.cdf(3 sqrt n Cpk, n - 1, 3 sqrt n c) = 0.975 and 0.025, one limit alone.
    struct Exact {
        double cpk;
        std::size_t n;
        double low, high;
    };
    for (const Exact& exact : {Exact{1, 30, 0.7158490612287915, 1.2806873235407494},
                               {1.33, 30, 0.9677528821353417, 1.689173688033911},
                               {1.33, 100, 1.1333293451483242, 1.5256534440840277},
                               {1.67, 50, 1.326808012388298, 2.0113471927545423},
                               {0.6667, 50, 0.504687453620617, 0.8262961663834472}}) {
        const auto c = capability(sample(exact.n, 0, 1), {}, 3 * exact.cpk);
        ASSERT_TRUE(c);
        EXPECT_FALSE(c->cp);
        EXPECT_NEAR(c->cpk, exact.cpk, 1e-12);
        EXPECT_NEAR(c->cpkInterval.low / exact.low, 1, 0.01);
        EXPECT_NEAR(c->cpkInterval.high / exact.high, 1, 0.01);
    }
}

TEST(Capability, IntervalsHoldTheTrueIndexAsOftenAsTheySay) {
    std::mt19937 random(3);
    std::normal_distribution<double> draw(10, 0.5);
    int cp = 0, cpk = 0;
    constexpr int trials = 2000;
    for (int k = 0; k < trials; ++k) {
        std::vector<double> values(40);
        for (double& value : values) value = draw(random);
        const auto c = capability(measured::sampleOf(values), 8.0, 11.5);  // true Cp 3.5 / 3, Cpk 1
        cp += c->cpInterval.low <= 3.5 / 3 && 3.5 / 3 <= c->cpInterval.high ? 1 : 0;
        cpk += c->cpkInterval.low <= 1 && 1 <= c->cpkInterval.high ? 1 : 0;
    }
    // 95 % of 2000 with four standard deviations of a count, 9.7 each.
    EXPECT_NEAR(cp, 1900, 39);
    EXPECT_NEAR(cpk, 1900, 39);
}

TEST(Capability, WithoutLimitsSpreadOrReadingsThereIsNone) {
    EXPECT_FALSE(capability(sample(30, 0, 1), {}, {}));
    EXPECT_FALSE(capability(sample(30, 0, 0), -1.0, 1.0));
    EXPECT_FALSE(capability(sample(1, 0, 1), -1.0, 1.0));
    const auto c = capability(sample(30, 0, 1), -3.0, 3.0);
    EXPECT_NEAR(c->outside, 0.0026997960632601866, 1e-15);  // SciPy 1.10.1: 2 stats.norm.sf(3)
}

TEST(Distribution, EvenValuesAreNotNormalAndFewAreNotJudged) {
    std::vector<double> even;
    for (int k = 0; k < 200; ++k) even.push_back(k);
    EXPECT_FALSE(measured::distributionOf(even).looksNormal());
    EXPECT_FALSE(measured::distributionOf({1, 2, 3}).andersonDarling);
    EXPECT_FALSE(measured::distributionOf({5, 5, 5, 5, 5, 5, 5, 5, 5}).andersonDarling);
    EXPECT_EQ(measured::distributionOf({5}).mean, (measured::Interval{5, 5}));
    EXPECT_EQ(measured::sampleOf({}).count, 0U);
    std::mt19937 random(5);
    std::normal_distribution<double> draw;
    int refused = 0;
    for (int k = 0; k < 1000; ++k) {
        std::vector<double> values(50);
        for (double& value : values) value = draw(random);
        refused += measured::distributionOf(values).looksNormal() ? 0 : 1;
    }
    EXPECT_NEAR(refused, 50, 28);  // 5 % of 1000, four standard deviations of a count
}

TEST(Pareto, MostFrequentFirstWithTheirSum) {
    const auto shares = measured::pareto({{"gap", 5}, {"shorted turn", 20}, {"", 5}, {"gap", 10}, {"none", 0}});
    ASSERT_EQ(shares.size(), 3U);
    EXPECT_EQ(shares[0].cause, "shorted turn");
    EXPECT_EQ(shares[1].cause, "gap");
    EXPECT_EQ(shares[1].units, 15U);
    EXPECT_DOUBLE_EQ(shares[1].cumulative, 0.875);
    EXPECT_DOUBLE_EQ(shares[2].cumulative, 1);
}

TEST(Chart, EachRuleIsMetByItsRun) {
    // Mean 0 and moving range near 1.128, so that the deviation is about one; then a run.
    std::vector<double> quiet;
    for (int k = 0; k < 200; ++k) quiet.push_back(k % 2 == 0 ? 0.564 : -0.564);
    const auto signalsOf = [&](const std::vector<double>& run) {
        std::vector<double> values = quiet;
        values.insert(values.end(), run.begin(), run.end());
        std::vector<Signal> all;
        for (const auto& out : measured::individualsChart(values).out)
            if (out.point >= quiet.size()) all.push_back(out.signal);
        return all;
    };
    const auto has = [](const std::vector<Signal>& all, Signal one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    EXPECT_TRUE(measured::individualsChart(quiet).out.empty());
    EXPECT_EQ(signalsOf({4}), (std::vector<Signal>{Signal::Beyond}));
    EXPECT_EQ(signalsOf({2.4, 0, 2.4}), (std::vector<Signal>{Signal::TwoOfThree}));
    EXPECT_TRUE(signalsOf({2.4, 0, -2.4}).empty()) << "on both sides";
    EXPECT_TRUE(has(signalsOf({1.5, 1.5, 0, 1.5, 1.5}), Signal::FourOfFive));
    EXPECT_TRUE(has(signalsOf({-.2, -.3, -.2, -.3, -.2, -.3, -.2, -.3}), Signal::EightOneSide));
    EXPECT_TRUE(has(signalsOf({-.6, -.4, -.2, 0, .2, .4}), Signal::SixTrend));
    EXPECT_FALSE(has(signalsOf({-.6, -.4, -.2, 0, .2, .1}), Signal::SixTrend));
}

TEST(Chart, TooFewValuesAreRefused) {
    EXPECT_THROW((void)measured::individualsChart({1}), std::invalid_argument);
    EXPECT_THROW((void)measured::meansChart({1, 2, 3}, 2), std::invalid_argument);
    EXPECT_THROW((void)measured::rangeFactors(26), std::invalid_argument);
    EXPECT_EQ(measured::meansChart({1, 2, 3, 4, 5}, 2).points, (std::vector<double>{1.5, 3.5}));
}

TEST(Drift, SlopeAndItsIntervalAgreeWithSciPy) {
    // SciPy 1.10.1: stats.linregress of these, and t of 0.975 and 5 by special.betaincinv.
    const auto d = measured::drift({0, 1, 2, 3, 5, 8, 13}, {1.0, 1.02, 1.01, 1.05, 1.08, 1.09, 1.17});
    EXPECT_NEAR(d.perDay, 0.012727272727272724, 1e-15);
    EXPECT_NEAR(d.half, 0.0029651842677765826, 1e-12);
    EXPECT_NEAR(d.sinceFirst, 13 * 0.012727272727272724, 1e-14);
    EXPECT_TRUE(d.isReal);
    EXPECT_FALSE(measured::drift({0, 1, 2, 3}, {1, 1.1, 1.1, 1}).isReal);
    EXPECT_THROW((void)measured::drift({1, 1, 1}, {1, 2, 3}), std::invalid_argument);
}

}  // namespace statistics_test
