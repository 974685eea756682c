// SPDX-License-Identifier: GPL-3.0-or-later
// Intervals, laws and variance shares against published numbers and closed forms.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "spread/draws.h"
#include "spread/intervals.h"
#include "spread/law.h"
#include "spread/normal.h"
#include "spread/shares.h"

namespace statistics_test {

using catalog::Law;

// E. B. Wilson, 1927; values derived.
TEST(Wilson, IntervalOfAShare) {
    const auto some = spread::wilson(950, 1000), all = spread::wilson(1000, 1000);
    EXPECT_NEAR(some.low, 0.934686, 5e-7);
    EXPECT_NEAR(some.high, 0.961870, 5e-7);
    EXPECT_NEAR(all.low, 0.996173, 5e-7);
    EXPECT_NEAR(all.high, 1, 1e-12);
}

// S. S. Wilks, 1941: 59 units bound 95 % of a population on one side, 93 on both, with 95 % confidence (from memory;
// 1 - 0.95^n and 1 - 0.95^n - n 0.05 0.95^(n - 1) derived).
TEST(Wilks, LeastNumberOfUnits) {
    EXPECT_EQ(spread::oneSided(58, 0.95, 0.95).low, 0U);
    EXPECT_EQ(spread::oneSided(59, 0.95, 0.95).low, 1U);
    EXPECT_EQ(spread::oneSided(59, 0.95, 0.95).high, 59U);
    EXPECT_NEAR(spread::oneSided(59, 0.95, 0.95).confidence, 1 - std::pow(0.95, 59), 1e-12);
    EXPECT_EQ(spread::twoSided(92, 0.95, 0.95).low, 0U);
    EXPECT_EQ(spread::twoSided(93, 0.95, 0.95).low, 1U);
    EXPECT_EQ(spread::twoSided(93, 0.95, 0.95).high, 93U);
}

TEST(Wilks, CoversAsOftenAsItSays) {
    // Of 400 samples of 300 uniform numbers, the bound leaves 5 % or less outside in at least 95 % (less three standard
    // errors of a share of 0.95).
    const auto ranks = spread::oneSided(300, 0.95, 0.95);
    ASSERT_GT(ranks.low, 1U);
    int covers = 0;
    constexpr int samples = 400;
    for (int s = 0; s < samples; ++s) {
        std::vector<double> values;
        for (std::uint64_t k = 0; k < 300; ++k)
            values.push_back(static_cast<double>(spread::scattered(static_cast<std::uint64_t>(s), k, 5) >> 11) *
                             0x1p-53);
        std::sort(values.begin(), values.end());
        covers += values[ranks.high - 1] >= 0.95 ? 1 : 0;
    }
    EXPECT_GE(covers, samples * 0.95 - 3 * std::sqrt(samples * 0.95 * 0.05));
}

// Half width over root 3 and root 6: derived.
TEST(LawOf, HasTheStandardDeviationOfItsKind) {
    constexpr double nominal = 40, half = 0.05;
    constexpr int count = 200000;
    for (const Law kind : {Law::Normal, Law::Uniform, Law::Triangular, Law::Lognormal}) {
        const spread::Law law{kind, half, true, {}};
        double sum = 0, squares = 0, standard = 0;
        for (int k = 0; k < count; ++k) {
            const double z = spread::normalQuantile((k + 0.5) / count);
            const double off = law.value(nominal, z) - nominal;
            sum += off;
            squares += off * off;
            standard += law.standard(z) * law.standard(z);
        }
        const double mean = sum / count, deviation = std::sqrt(squares / count - mean * mean);
        const double expected = kind == Law::Normal       ? nominal * half / 2
                                : kind == Law::Uniform    ? nominal * half / std::sqrt(3)
                                : kind == Law::Triangular ? nominal * half / std::sqrt(6)
                                                          : nominal * std::log(1 + half) / 2;
        EXPECT_NEAR(deviation, expected, 1e-3 * expected);
        EXPECT_NEAR(law.deviation(nominal), expected, 1e-12 * expected);
        EXPECT_NEAR(standard / count, 1, 1e-3);
    }
}

TEST(LawOf, StepsComeAsOftenAsTheySay) {
    const spread::Law law{Law::Discrete, 0, false, spread::wholeSteps({{1, 0.02}, {-1, 0.01}})};
    int more = 0, fewer = 0;
    constexpr int count = 10000;
    for (int k = 0; k < count; ++k) {
        const double value = law.value(188, spread::normalQuantile((k + 0.5) / count));
        more += value == 189 ? 1 : 0;
        fewer += value == 187 ? 1 : 0;
    }
    EXPECT_EQ(more, 200);
    EXPECT_EQ(fewer, 100);
    EXPECT_NEAR(law.deviation(188), std::sqrt(0.03 - 0.01 * 0.01), 1e-12);
}

// T. Ishigami and T. Homma, 1990: sin x1 + a sin^2 x2 + b x3^4 sin x1, a = 7, b = 0.1, x uniform from -pi to pi.
// First-order shares 0.3139, 0.4424, 0: A. Saltelli et al., Global Sensitivity Analysis: The Primer, 2008, as quoted in
// the manual of a library for such indices (seen); totals 0.5576, 0.4424, 0.2437 by the closed form (derived).
TEST(VarianceIndices, OfIshigamisFunction) {
    using std::numbers::pi;
    const auto ishigami = [](const std::vector<double>& u) {
        const auto x = [&](std::size_t k) { return pi * (2 * u[k] - 1); };
        return std::sin(x(0)) + 7 * std::pow(std::sin(x(1)), 2) + 0.1 * std::pow(x(2), 4) * std::sin(x(0));
    };
    const auto found = spread::varianceIndices(ishigami, 3, 1U << 15, 3);
    const double p4 = std::pow(pi, 4), all = 0.5 + 49.0 / 8 + 0.01 * p4 * p4 / 18 + 0.1 * p4 / 5;
    EXPECT_NEAR(found.mean, 3.5, 2e-3);
    EXPECT_NEAR(found.variance, all, 5e-3 * all);
    constexpr double within = 2e-3;
    EXPECT_NEAR(found.first[0], 0.3139, within);
    EXPECT_NEAR(found.first[1], 0.4424, within);
    EXPECT_NEAR(found.first[2], 0.0, within);
    EXPECT_NEAR(found.total[0], (0.5 * std::pow(1 + 0.1 * p4 / 5, 2) + 8 * 0.01 * p4 * p4 / 225) / all, within);
    EXPECT_NEAR(found.total[1], 0.4424, within);
    EXPECT_NEAR(found.total[2], 8 * 0.01 * p4 * p4 / 225 / all, within);
}

// y = 3 x1 + 4 x2 + x3^2: variances 9, 16, 2 for standard normal x: derived.
TEST(VarianceShares, OfALineAndASquare) {
    const std::vector<spread::Drawn> drawn{{"x1", {}, 0, ""}, {"x2", {}, 0.3, ""}, {"x3", {}, 1, ""}};
    std::vector<spread::Drawn> three = drawn;
    for (auto& d : three) d.law.halfWidth = 2;  // one standard deviation is 1
    const spread::Draws draws(three, 1, 4);
    std::vector<std::vector<double>> numbers;
    std::vector<double> y;
    for (std::uint64_t k = 0; k < 4096; ++k) {
        const auto z = draws.deviates(k);
        numbers.push_back(draws.standards(k));
        y.push_back(3 * z[0] + 4 * z[1] + z[2] * z[2]);
    }
    ASSERT_EQ(draws.causes().size(), 4U);
    EXPECT_EQ(draws.causes()[0].name, "x1 by unit");
    EXPECT_EQ(draws.causes()[1].name, "x2 by unit");
    EXPECT_EQ(draws.causes()[2].name, "x2 by lot");
    EXPECT_EQ(draws.causes()[3].name, "x3 by lot");
    const auto shares = spread::sharesOf(spread::regressions(numbers, {y}).front(), draws.causes());
    ASSERT_TRUE(shares.enough);
    EXPECT_NEAR(shares.explained, 1, 1e-9);
    EXPECT_NEAR(shares.share[0], 9.0 / 27, 5e-3);
    EXPECT_NEAR(shares.share[1], 16 * 0.7 / 27, 5e-3);
    EXPECT_NEAR(shares.share[2], 16 * 0.3 / 27, 5e-3);
    EXPECT_NEAR(shares.share[3], 2.0 / 27, 5e-3);
}

/// Ten lots do not blur what five numbers with lots of their own do: 1, 4, 9, 16, 25 of 55, of which lots make 0.8.
TEST(VarianceShares, FromFewLots) {
    std::vector<spread::Drawn> five;
    for (const char* name : {"a", "b", "c", "d", "e"})
        five.push_back({name, {catalog::Law::Normal, 2, true, {}}, 0.8, ""});
    const spread::Draws draws(five, 4, 40);
    std::vector<std::vector<double>> numbers;
    std::vector<double> y;
    for (std::uint64_t k = 0; k < 400; ++k) {
        numbers.push_back(draws.standards(k));
        y.push_back(0);
        for (std::size_t i = 0; i < 5; ++i) y.back() += static_cast<double>(i + 1) * numbers.back()[i];
    }
    const auto shares = spread::sharesOf(spread::regressions(numbers, {y}).front(), draws.causes());
    for (std::size_t i = 0; i < 5; ++i) {
        const double square = static_cast<double>((i + 1) * (i + 1)) / 55;
        EXPECT_NEAR(shares.share[i], 0.2 * square, 1e-9);
        EXPECT_NEAR(shares.share[5 + i], 0.8 * square, 1e-9);
    }
}

/// Two sheets of one roll add up as the roll does: (1 + 1)^2 by lot, 1 + 1 by unit, each times its part.
TEST(VarianceShares, OfSheetsOfOneRoll) {
    const spread::Law law{catalog::Law::Normal, 2, true, {}};
    const spread::Draws draws({{"one", law, 0.5, "roll"}, {"other", law, 0.5, "roll"}}, 4, 2);
    std::vector<std::vector<double>> numbers;
    std::vector<double> y;
    for (std::uint64_t k = 0; k < 256; ++k) {
        numbers.push_back(draws.standards(k));
        y.push_back(numbers.back()[0] + numbers.back()[1]);
    }
    const auto shares = spread::sharesOf(spread::regressions(numbers, {y}).front(), draws.causes());
    ASSERT_EQ(draws.causes().size(), 3U);
    EXPECT_NEAR(shares.share[0], 0.5 / 3, 1e-9);
    EXPECT_NEAR(shares.share[1], 0.5 / 3, 1e-9);
    EXPECT_NEAR(shares.share[2], 2.0 / 3, 1e-9);
}

TEST(DrawsOf, UnitsOfALotShareWhatTheLotHas) {
    const std::vector<spread::Drawn> drawn{{"a", {}, 1, "roll"}, {"b", {}, 1, "roll"}, {"c", {}, 0.5, "roll"}};
    const spread::Draws draws(drawn, 9, 10);
    const auto first = draws.deviates(30), last = draws.deviates(39), next = draws.deviates(40);
    EXPECT_EQ(first[0], first[1]);
    EXPECT_EQ(first[0], last[0]);
    EXPECT_NE(first[0], next[0]);
    EXPECT_NE(first[2], last[2]);
    double together = 0, square = 0;
    constexpr std::uint64_t count = 20480;
    for (std::uint64_t k = 0; k < count; ++k) {
        const auto z = draws.deviates(k);
        together += z[0] * z[2] / count;
        square += z[2] * z[2] / count;
    }
    EXPECT_NEAR(square, 1, 0.02);
    EXPECT_NEAR(together, std::sqrt(0.5), 0.02);
}

}  // namespace statistics_test
