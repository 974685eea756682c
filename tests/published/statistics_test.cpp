// SPDX-License-Identifier: GPL-3.0-or-later
// What readings say of units, against data sets with certified values and worked examples.
// NIST StRD, univariate summary statistics: data and certified values seen as copies in two public test collections
// that agree. NIST/SEMATECH e-Handbook of Statistical Methods: from memory.
#include <gtest/gtest.h>

#include <cmath>

#include "measured/control_chart.h"
#include "measured/statistics.h"

namespace statistics_test {

using measured::sampleOf;

const std::vector<double> lottery{
    162, 671, 933, 414, 788, 730, 817, 33,  536, 875, 670, 236, 473, 167, 877, 980, 316, 950, 456, 92,  517, 557,
    956, 954, 104, 178, 794, 278, 147, 773, 437, 435, 502, 610, 582, 780, 689, 562, 964, 791, 28,  97,  848, 281,
    858, 538, 660, 972, 671, 613, 867, 448, 738, 966, 139, 636, 847, 659, 754, 243, 122, 455, 195, 968, 793, 59,
    730, 361, 574, 522, 97,  762, 431, 158, 429, 414, 22,  629, 788, 999, 187, 215, 810, 782, 47,  34,  108, 986,
    25,  644, 829, 630, 315, 567, 919, 331, 207, 412, 242, 607, 668, 944, 749, 168, 864, 442, 533, 805, 372, 63,
    458, 777, 416, 340, 436, 140, 919, 350, 510, 572, 905, 900, 85,  389, 473, 758, 444, 169, 625, 692, 140, 897,
    672, 288, 312, 860, 724, 226, 884, 508, 976, 741, 476, 417, 831, 15,  318, 432, 241, 114, 799, 955, 833, 358,
    935, 146, 630, 830, 440, 642, 356, 373, 271, 715, 367, 393, 190, 669, 8,   861, 108, 795, 269, 590, 326, 866,
    64,  523, 862, 840, 219, 382, 998, 4,   628, 305, 747, 247, 34,  747, 729, 645, 856, 974, 24,  568, 24,  694,
    608, 480, 410, 729, 947, 293, 53,  930, 223, 203, 677, 227, 62,  455, 387, 318, 562, 242, 428, 968};

const std::vector<double> mavro{
    2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150, 2.00150, 2.00170, 2.00180, 2.00180,
    2.00190, 2.00190, 2.00210, 2.00200, 2.00160, 2.00140, 2.00130, 2.00130, 2.00150, 2.00150, 2.00160, 2.00150, 2.00140,
    2.00130, 2.00140, 2.00150, 2.00140, 2.00150, 2.00160, 2.00150, 2.00160, 2.00190, 2.00200, 2.00200, 2.00210, 2.00220,
    2.00230, 2.00240, 2.00250, 2.00270, 2.00260, 2.00260, 2.00260, 2.00270, 2.00260, 2.00250, 2.00240};

const std::vector<double> michelso{
    299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93,
    299.65, 299.76, 299.81, 300.00, 300.00, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80,
    299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79, 299.76,
    299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91,
    299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80,
    299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85,
    299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87,
    299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.80, 299.81, 299.87};

/// Certified to 15 digits; a reading has 53 bits, which the tolerance leaves room for.
void expectCertified(const std::vector<double>& values, double mean, double deviation, double digits) {
    const auto sample = sampleOf(values);
    EXPECT_NEAR(sample.mean / mean, 1, 2e-15);
    EXPECT_NEAR(sample.deviation / deviation, 1, std::pow(10, -digits));
}

TEST(PublishedStatistics, LotteryMavroAndMichelso) {
    expectCertified(lottery, 518.958715596330, 291.699727470969, 14);
    expectCertified(mavro, 2.00185600000000, 0.000429123454003053, 12);
    expectCertified(michelso, 299.852400000000, 0.0790105478190518, 12);
}

/// Certified exactly for decimal readings; the last set's readings as doubles differ from them by up to 1e-9 (half of
/// their spacing, 1.9e-9), in the deviation 5.6e-9 of it.
TEST(PublishedStatistics, NumAcc1To4) {
    expectCertified({10000001, 10000003, 10000002}, 10000002, 1, 15);
    const auto alternating = [](double middle, double low, double high) {
        std::vector<double> values{middle};
        for (int k = 0; k < 500; ++k) {
            values.push_back(low);
            values.push_back(high);
        }
        return values;
    };
    expectCertified(alternating(1.2, 1.1, 1.3), 1.2, 0.1, 14);
    expectCertified(alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 9);
    expectCertified(alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 8);
}

/// SciPy 1.10.1: stats.t.interval, stats.chi2.ppf and stats.anderson of the Michelso data.
TEST(PublishedStatistics, IntervalsAndNormalityOfMichelso) {
    const auto d = measured::distributionOf(michelso);
    EXPECT_NEAR(d.mean.low, 299.83672259316694, 1e-10);
    EXPECT_NEAR(d.mean.high, 299.86807740683304, 1e-10);
    EXPECT_NEAR(d.deviation.low, 0.0693718, 5e-8);
    EXPECT_NEAR(d.deviation.high, 0.0917846, 5e-8);
    ASSERT_TRUE(d.andersonDarling);
    EXPECT_NEAR(*d.andersonDarling, 0.46432325643687317, 1e-9);
    EXPECT_TRUE(d.looksNormal());
}

/// e-Handbook 6.1.6, from memory: limits 8 and 20, mean 16, deviation 2: Cp 1.0, Cpk 0.6667.
TEST(PublishedStatistics, CapabilityOfTheHandbook) {
    const auto c = measured::capability({50, 16, 2, 10, 20}, 8.0, 20.0);
    ASSERT_TRUE(c && c->cp);
    EXPECT_NEAR(*c->cp, 1.0, 1e-12);
    EXPECT_NEAR(c->cpk, 0.6667, 5e-5);
}

/// e-Handbook 6.3.2.2, from memory: ten flow rates; mean 50.81, mean moving range 1.8778, limits 55.8041 and 45.8159,
/// all within. It rounds d2 to 1.128, which moves a limit by 0.0017.
TEST(PublishedStatistics, IndividualsChartOfTheHandbook) {
    const auto chart = measured::individualsChart({49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1});
    EXPECT_NEAR(chart.line.centre, 50.81, 1e-12);
    EXPECT_NEAR(chart.rangeLine.centre, 1.8778, 5e-5);
    EXPECT_NEAR(chart.line.high, 55.8041, 0.002);
    EXPECT_NEAR(chart.line.low, 45.8159, 0.002);
    EXPECT_EQ(chart.rangeLine.low, 0);
    for (const auto& out : chart.out) EXPECT_NE(out.signal, measured::Signal::Beyond);
    EXPECT_TRUE(chart.rangesOut.empty());
}

/// D. Montgomery and G. Runger, Applied Statistics and Probability for Engineers, 3rd ed., example 16-2 and table 16-3
/// (seen): 20 concentrations, mean 99.1, mean moving range 2.59, limits 105.99 and 92.21; ranges up to D4 of 3.267; no
/// point out.
TEST(PublishedStatistics, IndividualsChartOfMontgomeryAndRunger) {
    const auto chart = measured::individualsChart({102.0, 94.8, 98.3,  98.4, 102.0, 98.5, 99.0,  97.7,  100.0, 98.1,
                                                   101.3, 98.7, 101.1, 98.4, 97.0,  96.7, 100.3, 101.4, 97.2,  101.0});
    EXPECT_NEAR(chart.line.centre, 99.1, 0.05);
    EXPECT_NEAR(chart.rangeLine.centre, 2.59, 0.005);
    EXPECT_NEAR(chart.line.high, 105.99, 0.02);  // of the rounded 99.1 and 2.59
    EXPECT_NEAR(chart.line.low, 92.21, 0.02);
    EXPECT_NEAR(chart.rangeLine.high / chart.rangeLine.centre, 3.267, 5e-4);
    for (const auto& out : chart.out) EXPECT_NE(out.signal, measured::Signal::Beyond);
    EXPECT_TRUE(chart.rangesOut.empty());
}

/// Factors of control charts: d2 of 2 and 5, A2 0.577, D3 0, D4 2.114 of five (seen in worked solutions); d3 from
/// memory; d2 of ten by SciPy 1.10.1's quadrature.
TEST(PublishedStatistics, FactorsOfRanges) {
    const auto two = measured::rangeFactors(2), five = measured::rangeFactors(5), ten = measured::rangeFactors(10);
    EXPECT_NEAR(two.d2, 2 / std::sqrt(std::acos(-1.0)), 1e-12);
    EXPECT_NEAR(two.d3, std::sqrt(2 - 4 / std::acos(-1.0)), 1e-6);
    EXPECT_NEAR(five.d2, 2.326, 5e-4);
    EXPECT_NEAR(five.d3, 0.864, 5e-4);
    EXPECT_NEAR(3 / (five.d2 * std::sqrt(5)), 0.577, 5e-4);
    EXPECT_NEAR(1 + 3 * five.d3 / five.d2, 2.114, 1e-3);
    EXPECT_NEAR(ten.d2, 3.077505461670344, 1e-9);
    EXPECT_NEAR(1 - 3 * ten.d3 / ten.d2, 0.223, 5e-4);  // D3 of ten, from memory
}

}  // namespace statistics_test
