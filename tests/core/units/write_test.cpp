// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include "units/decimal.h"
#include "units/text.h"

namespace write_test {

using units::Kind;

struct Row {
    Kind kind;
    double value;
    int digits;
    const char* text;
};

TEST(WriteQuantity, PrefixAndDigitsAreThoseOfTheTrade) {
    const Row rows[] = {
        {Kind::Resistance, 4700, 3, "4.70 kΩ"},
        {Kind::Resistance, 0.47, 3, "470 mΩ"},
        {Kind::Resistance, 999.6, 3, "1.00 kΩ"},
        {Kind::Resistance, 0, 3, "0.00 Ω"},
        {Kind::Resistance, -0.0, 3, "0.00 Ω"},
        {Kind::Resistance, -47, 2, "-47 Ω"},
        {Kind::Resistance, 119, 2, "120 Ω"},
        {Kind::Resistance, 1.2e12, 3, "1200 GΩ"},
        {Kind::Resistance, 1e20, 3, "1.00e20 Ω"},
        {Kind::Inductance, 119e-6, 3, "119 µH"},
        {Kind::Inductance, 5, 4, "5.000 H"},
        {Kind::Capacitance, 1e-12, 3, "1.00 pF"},
        {Kind::Capacitance, 9.999e-10, 3, "1.00 nF"},
        {Kind::Frequency, 20000, 3, "20.0 kHz"},
        {Kind::Time, 1.5e-6, 2, "1.5 µs"},
        {Kind::Voltage, 0.7745967, 4, "774.6 mV"},
        {Kind::Current, 5e-4, 1, "500 µA"},
        {Kind::Flux, 0.7, 2, "700 mT"},
        {Kind::Field, 2500, 3, "2.50 kA/m"},
        {Kind::VoltageNoise, 1.2e-9, 2, "1.2 nV/√Hz"},
        {Kind::CurrentNoise, 1e-12, 2, "1.0 pA/√Hz"},
        {Kind::Length, 1e-4, 3, "0.100 mm"},
        {Kind::Length, 1e-4, 1, "0.1 mm"},
        {Kind::Length, 5e-6, 3, "5.00 µm"},
        {Kind::Length, 123.4, 3, "123 m"},
        {Kind::Length, 0, 3, "0.00 mm"},
        {Kind::Length, 0.0127, 3, "12.7 mm"},
        {Kind::Area, 1.2e-4, 3, "120 mm²"},
        {Kind::Mass, 0.12, 3, "120 g"},
        {Kind::Mass, 1.2, 3, "1.20 kg"},
        {Kind::Share, 0.2, 3, "20.0 %"},
        {Kind::Share, 1.234, 3, "123 %"},
        {Kind::Count, 12345, 3, "12345"},
        {Kind::Turns, 12.5, 3, "12.5"},
        {Kind::Number, 0.0123456, 3, "0.0123"},
        {Kind::Number, 12345, 3, "12300"},
        {Kind::LevelDbu, 4, 3, "+4.00 dBu"},
        {Kind::LevelDbu, -10, 3, "-10.0 dBu"},
        {Kind::LevelDbu, 0, 3, "0.00 dBu"},
        {Kind::LevelDbu, 0.001, 3, "0.00 dBu"},
        {Kind::LevelDbu, -0.001, 3, "0.00 dBu"},
        {Kind::Decibel, 0.424, 3, "0.42 dB"},
        {Kind::Decibel, -3.01, 3, "-3.01 dB"},
        {Kind::Decibel, 99.96, 3, "100 dB"},
        {Kind::Temperature, 20, 3, "20.0 °C"},
        {Kind::Angle, 45, 2, "45°"},
        {Kind::Resistance, std::numeric_limits<double>::infinity(), 3, "∞"},
        {Kind::Resistance, -std::numeric_limits<double>::infinity(), 3, "-∞"},
        {Kind::Resistance, std::numeric_limits<double>::quiet_NaN(), 3, "–"},
    };
    for (const Row& row : rows) EXPECT_EQ(units::write(row.kind, row.value, row.digits), row.text);
}

TEST(WriteQuantity, ExactTextIsShort) {
    EXPECT_EQ(units::writeExact(Kind::Length, 1e-4), "0.1 mm");
    EXPECT_EQ(units::writeExact(Kind::Length, 0.0254), "25.4 mm");
    EXPECT_EQ(units::writeExact(Kind::Length, 0), "0 mm");
    EXPECT_EQ(units::writeExact(Kind::Mass, 0), "0 g");
    EXPECT_EQ(units::writeExact(Kind::Share, 0), "0 %");
    EXPECT_EQ(units::writeExact(Kind::Resistance, 4700), "4.7 kΩ");
    EXPECT_EQ(units::writeExact(Kind::Turns, 1200), "1200");
    EXPECT_EQ(units::writeExact(Kind::Turns, 12.5), "12.5");
    EXPECT_EQ(units::writeExact(Kind::Share, 0.07), "7 %");
    EXPECT_EQ(units::writeExact(Kind::LevelDbu, -10), "-10 dBu");
    EXPECT_EQ(units::writeExact(Kind::Temperature, 20), "20 °C");
    EXPECT_EQ(units::writeExact(Kind::Angle, 45), "45°");
}

TEST(WriteQuantity, DigitsFollowTheUncertainty) {
    EXPECT_EQ(units::writeWithUncertainty(Kind::Inductance, 119.4e-6, 0.05), "119 µH");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Inductance, 119.4e-6, 0.10), "120 µH");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Inductance, 119.4e-6, 0.9), "120 µH");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Inductance, 119.4e-6, 0.001), "119.4 µH");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Inductance, 119.4e-6, 0), "119.4 µH");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Decibel, 0.4238, 0.02), "0.42 dB");
    EXPECT_EQ(units::writeWithUncertainty(Kind::LevelDbu, 12.34, 0.5), "+12.3 dBu");
    EXPECT_EQ(units::writeWithUncertainty(Kind::LevelDbu, 12.34, 2), "+12 dBu");
    EXPECT_EQ(units::writeWithUncertainty(Kind::Turns, 1200, 0.5), "1200");
}

TEST(WriteNumber, ShortestAndSignificant) {
    const std::pair<double, const char*> shortest[] = {{0, "0"},
                                                       {-0.0, "-0"},
                                                       {1, "1"},
                                                       {100000, "100000"},
                                                       {1e14, "100000000000000"},
                                                       {1e15, "1e15"},
                                                       {0.1, "0.1"},
                                                       {0.0001, "0.0001"},
                                                       {0.00001, "1e-5"},
                                                       {2.54e-5, "2.54e-5"},
                                                       {-1.5e-7, "-1.5e-7"},
                                                       {1e300, "1e300"},
                                                       {0.1 + 0.2, "0.30000000000000004"},
                                                       {123456.75, "123456.75"},
                                                       {static_cast<double>(0.1f), "0.10000000149011612"},
                                                       {5e-324, "5e-324"}};
    for (const auto& [value, text] : shortest) EXPECT_EQ(units::shortest(value), text);
    EXPECT_EQ(units::significant(1234.5, 6), "1234.50");
    EXPECT_EQ(units::significant(0.1, 6), "0.100000");
    EXPECT_EQ(units::significant(1e6, 6), "1.00000e6");
    EXPECT_EQ(units::significant(1e-7, 3), "1.00e-7");
    EXPECT_EQ(units::significant(0, 3), "0.00");
    EXPECT_EQ(units::significant(-2.0 / 3, 3), "-0.667");
}

TEST(WriteNumber, ShortestReadsBackForAnyDouble) {
    std::mt19937_64 chance(3);
    for (int i = 0; i < 50000; ++i) {
        const auto value = std::bit_cast<double>(chance());
        if (!std::isfinite(value)) continue;
        const std::string text = units::shortest(value);
        double back = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), back);
        ASSERT_TRUE(error == std::errc{} && end == text.data() + text.size()) << text;
        ASSERT_EQ(std::bit_cast<std::uint64_t>(back), std::bit_cast<std::uint64_t>(value)) << text;
    }
}

TEST(WriteNumber, ExactTextReadsBackForEveryKind) {
    std::mt19937_64 chance(11);
    std::uniform_real_distribution<double> exponent(-18, 13), mantissa(-10, 10);
    for (int number = 0; number <= static_cast<int>(Kind::Angle); ++number) {
        const auto kind = static_cast<Kind>(number);
        for (int i = 0; i < 4000; ++i) {
            double value = mantissa(chance) * std::pow(10, exponent(chance));
            if (i % 3 == 0) value = std::round(mantissa(chance) * 100) / 100 * std::pow(10, i % 19 - 9);
            if (kind == Kind::Share) value = std::abs(value) > 1 ? 1 / std::abs(value) : std::abs(value);
            if (kind == Kind::Count) value = std::round(value);
            if (kind == Kind::Turns) value = std::round(value * 2) / 2;
            const std::string text = units::writeExact(kind, value);
            ASSERT_EQ(units::read(kind, text), value) << text << " of kind " << number;
        }
    }
}

TEST(Decimal, PlacesTheDecimalSign) {
    EXPECT_EQ(units::placed({false, "47", 3}), "4700");
    EXPECT_EQ(units::placed({false, "47", 3}, 3), "4.7");
    EXPECT_EQ(units::placed({true, "100", -4}, -3), "-0.100");
    EXPECT_EQ(units::fixedDecimals(-0.04, 1), "0.0");
    EXPECT_EQ(units::fixedDecimals(-0.06, 1), "-0.1");
    EXPECT_FALSE(units::nearest<double>("1e400", 0));
    EXPECT_EQ(units::nearest<double>("0", 500), 0.0);
}

}  // namespace write_test
