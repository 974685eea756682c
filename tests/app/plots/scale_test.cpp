// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/scale.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scale_test {

using plots::tickText;

TEST(TickText, HasPrefixesAndATrueMinus) {
    EXPECT_EQ(tickText(1, true), "1");
    EXPECT_EQ(tickText(10000, true), QString::fromUtf8("10\u2009k"));
    EXPECT_EQ(tickText(1e6, true), QString::fromUtf8("1\u2009M"));
    EXPECT_EQ(tickText(2500, true), QString::fromUtf8("2.5\u2009k"));
    EXPECT_EQ(tickText(-2e-6, true), QString::fromUtf8("\u22122\u2009µ"));
    EXPECT_EQ(tickText(0.05, true), QString::fromUtf8("50\u2009m"));
    EXPECT_EQ(tickText(-40, false), QString::fromUtf8("\u221240"));
    EXPECT_EQ(tickText(1000, false), "1000");
    EXPECT_EQ(tickText(0, true), "0");
    EXPECT_EQ(tickText(999.9999999999, true), QString::fromUtf8("1\u2009k")) << "a rounding error is no other decade";
}

TEST(TickText, OnlyUnitsThatTakeThemGetPrefixes) {
    EXPECT_TRUE(plots::takesPrefix("ohm"));
    EXPECT_TRUE(plots::takesPrefix("s"));
    EXPECT_FALSE(plots::takesPrefix("dB"));
    EXPECT_FALSE(plots::takesPrefix("dBu"));
    EXPECT_FALSE(plots::takesPrefix("deg"));
    EXPECT_FALSE(plots::takesPrefix(""));
}

analysis::Curve curve(std::vector<double> y, const std::string& unit, bool logarithmic = false) {
    return {"c", "c", units::kindOfUnit(unit), unit, std::move(y), logarithmic, {}};
}

TEST(ValueAt, IsStraightOnALogarithmicFrequencyAxis) {
    const std::vector<double> f{10, 1000};
    EXPECT_NEAR(plots::valueAt(f, curve({0, -20}, "dB"), 100), -10, 1e-12);
    EXPECT_NEAR(plots::valueAt(f, curve({1, 10000}, "ohm", true), 100), 100, 1e-9);
    EXPECT_EQ(plots::valueAt(f, curve({3, 7}, "dB"), 10), 3);
    EXPECT_EQ(plots::valueAt(f, curve({3, 7}, "dB"), 1000), 7);
    EXPECT_TRUE(std::isnan(plots::valueAt(f, curve({3, 7}, "dB"), 9)));
    EXPECT_TRUE(std::isnan(plots::valueAt(f, curve({3, 7}, "dB"), 1001)));
}

TEST(ValueAt, EndsWhereNoMoreIsKnown) {
    auto known = curve({60, 100, 120}, "dB");
    known.knownTo = 80;
    const std::vector<double> f{10, 100, 1000};
    EXPECT_EQ(plots::valueAt(f, known, 10), 60);
    EXPECT_EQ(plots::valueAt(f, known, 100), 80);
    EXPECT_EQ(plots::valueAt(f, known, 300), 80);
    EXPECT_EQ(plots::valueAt(f, curve({60, 100, 120}, "dB"), 100), 100);
    analysis::Trace trace;
    trace.frequency = f;
    trace.curves = {known};
    EXPECT_LE(plots::roundRange(trace, {&trace.curves[0]}, 1, 1e9).upper, 85) << "no room for what is not known";
}

QCPRange rangeOf(std::vector<double> y, const std::string& unit, bool logarithmic = false) {
    analysis::Trace trace;
    for (std::size_t i = 0; i < y.size(); ++i) trace.frequency.push_back(std::pow(10, i));
    trace.curves = {curve(std::move(y), unit, logarithmic)};
    return plots::roundRange(trace, {&trace.curves[0]}, 1, 1e9);
}

TEST(RoundRange, HoldsTheCurveWithRoundEnds) {
    const QCPRange db = rangeOf({-3, 13.7, -23}, "dB");
    EXPECT_LE(db.lower, -23);
    EXPECT_GE(db.upper, 13.7);
    EXPECT_EQ(std::fmod(db.lower, 5), 0);
    const QCPRange ohm = rangeOf({180, 42000}, "ohm", true);
    EXPECT_DOUBLE_EQ(ohm.lower, 100);
    EXPECT_DOUBLE_EQ(ohm.upper, 100000);
    const QCPRange degrees = rangeOf({-170, 80}, "deg");
    EXPECT_EQ(degrees.lower, -180);
    EXPECT_EQ(degrees.upper, 90);
}

TEST(RoundRange, CutsOffWhatLiesFarBelow) {
    EXPECT_GE(rangeOf({0, -300}, "dB").lower, -90);
}

TEST(RoundRange, KeepsTheLowEndOfALevel) {
    const QCPRange range = rangeOf({-20, 9, 120}, "dBu");
    EXPECT_LE(range.lower, -20);
    EXPECT_LE(range.upper, 70);
}

TEST(RoundRange, IgnoresWhatIsNotFiniteAndGivesARangeToNothing) {
    const QCPRange range = rangeOf({1, NAN, INFINITY, 2}, "dB");
    EXPECT_LE(range.upper, 4);
    EXPECT_GT(rangeOf({NAN}, "dB").size(), 0);
    EXPECT_GT(rangeOf({NAN}, "ohm", true).lower, 0);
    EXPECT_GT(rangeOf({5, 5, 5}, "s").size(), 0);
}

}  // namespace scale_test
