// SPDX-License-Identifier: GPL-3.0-or-later
// What people type, and what it is in SI. Expected values are worked out by hand from the definitions of the units
// (1 in = 25.4 mm exactly; AWG by its formula; 0 dBu = sqrt(0.6) V).
#include <gtest/gtest.h>

#include <cmath>

#include "units/fault.h"
#include "units/text.h"

namespace read_test {

using units::Kind;

struct Row {
    Kind kind;
    const char* text;
    double expected;
    double tolerance = 0;  // relative; 0: the very same double
};

const Row rows[] = {
    // Resistance: prefixes, spellings of the ohm, RKM code (IEC 60062)
    {Kind::Resistance, "4k7", 4700},
    {Kind::Resistance, "4K7", 4700},
    {Kind::Resistance, "4R7", 4.7},
    {Kind::Resistance, "R47", 0.47},
    {Kind::Resistance, "0R22", 0.22},
    {Kind::Resistance, "k47", 470},
    {Kind::Resistance, "1M5", 1.5e6},
    {Kind::Resistance, "1G2", 1.2e9},
    {Kind::Resistance, "2m2", 2.2e-3},
    {Kind::Resistance, "4k7 ohm", 4700},
    {Kind::Resistance, "4k7Ω", 4700},
    {Kind::Resistance, "4R7 Ω", 4.7},
    {Kind::Resistance, "-4k7", -4700},
    {Kind::Resistance, "4k7+100", 4800},
    {Kind::Resistance, "2*4k7", 9400},
    {Kind::Resistance, "47", 47},
    {Kind::Resistance, "47R", 47},
    {Kind::Resistance, "47 ohm", 47},
    {Kind::Resistance, "47 ohms", 47},
    {Kind::Resistance, "47 Ohm", 47},
    {Kind::Resistance, "47\u03A9", 47},
    {Kind::Resistance, "47 \u2126", 47},
    {Kind::Resistance, "4.7 kΩ", 4700},
    {Kind::Resistance, "4,7 kΩ", 4700},
    {Kind::Resistance, "4.7k", 4700},
    {Kind::Resistance, "4.7 K", 4700},
    {Kind::Resistance, "1 Mohm", 1e6},
    {Kind::Resistance, "10 mohm", 0.01},
    {Kind::Resistance, "10 mΩ", 0.01},
    {Kind::Resistance, "10 µΩ", 1e-5},
    {Kind::Resistance, "10 \u03BC\u03A9", 1e-5},
    {Kind::Resistance, "10 uohm", 1e-5},
    {Kind::Resistance, "1/2 kΩ", 500},
    {Kind::Resistance, "1/2k", 500},
    {Kind::Resistance, "(1+2) k", 3000},
    {Kind::Resistance, "10k*2k/5k", 4000},
    {Kind::Resistance, "1e3", 1000},
    {Kind::Resistance, "1E3 ohm", 1000},
    {Kind::Resistance, "1.5e-3k", 1.5},
    {Kind::Resistance, "1e+2", 100},
    {Kind::Resistance, "  600  ", 600},
    {Kind::Resistance, "600\u00A0Ω", 600},
    {Kind::Resistance, "600\u202FΩ", 600},
    {Kind::Resistance, "\t600", 600},
    {Kind::Resistance, "+600", 600},
    {Kind::Resistance, "0", 0},
    // Other electrical kinds
    {Kind::Capacitance, "2n2", 2.2e-9},
    {Kind::Capacitance, "2n2F", 2.2e-9},
    {Kind::Capacitance, "2.2 nF", 2.2e-9},
    {Kind::Capacitance, "10p", 1e-11},
    {Kind::Capacitance, "10 pF", 1e-11},
    {Kind::Capacitance, "4u7", 4.7e-6},
    {Kind::Capacitance, "4µ7", 4.7e-6},
    {Kind::Capacitance, "4\u03BC7", 4.7e-6},
    {Kind::Capacitance, "p47", 4.7e-13},
    {Kind::Capacitance, "50 fF", 5e-14},
    {Kind::Capacitance, "100 pF + 2n2", 2.3e-9, 1e-15},
    {Kind::Inductance, "1u5", 1.5e-6},
    {Kind::Inductance, "119 µH", 119e-6},
    {Kind::Inductance, "2.2 mH", 2.2e-3},
    {Kind::Inductance, "5 H", 5},
    {Kind::Inductance, "2*(3+4) mH", 14e-3},
    {Kind::Frequency, "20 kHz", 20000},
    {Kind::Frequency, "20k", 20000},
    {Kind::Frequency, "1M", 1e6},
    {Kind::Frequency, "0,1 Hz", 0.1},
    {Kind::Frequency, "440", 440},
    {Kind::Time, "1.5 ms", 1.5e-3},
    {Kind::Time, "10 µs", 1e-5},
    {Kind::Voltage, "775 mV", 0.775},
    {Kind::Voltage, "1.228 V", 1.228},
    {Kind::Voltage, "48", 48},
    {Kind::Current, "0.5 mA", 0.5e-3},
    {Kind::Flux, "0.7 T", 0.7},
    {Kind::Flux, "700 mT", 0.7},
    {Kind::Field, "2.5 A/m", 2.5},
    {Kind::Field, "2.5 kA/m", 2500},
    {Kind::Field, "10 A/m / 4", 2.5},
    // Length
    {Kind::Length, "0.1 mm", 1e-4},
    {Kind::Length, "0,1 mm", 1e-4},
    {Kind::Length, "0.1", 1e-4},
    {Kind::Length, ".1", 1e-4},
    {Kind::Length, ",1 mm", 1e-4},
    {Kind::Length, "5. mm", 5e-3},
    {Kind::Length, "12", 0.012},
    {Kind::Length, "1.5 m", 1.5},
    {Kind::Length, "2 cm", 0.02},
    {Kind::Length, "1 km", 1000},
    {Kind::Length, "25 um", 25e-6},
    {Kind::Length, "25 \u00B5m", 25e-6},
    {Kind::Length, "25 \u03BCm", 25e-6},
    {Kind::Length, "500 nm", 5e-7},
    {Kind::Length, "1 in", 0.0254},
    {Kind::Length, "1in", 0.0254},
    {Kind::Length, "1 inch", 0.0254},
    {Kind::Length, "2 inches", 0.0508},
    {Kind::Length, "1\"", 0.0254},
    {Kind::Length, "1\u2033", 0.0254},
    {Kind::Length, "0.004in", 0.0001016},
    {Kind::Length, "4 mil", 0.0001016},
    {Kind::Length, "4mils", 0.0001016},
    {Kind::Length, "1/2 in", 0.0127},
    {Kind::Length, "1/2in", 0.0127},
    {Kind::Length, "1/2\"", 0.0127},
    {Kind::Length, "(1+1/2) in", 0.0381},
    {Kind::Length, "1 in + 1/2 in", 0.0381},
    {Kind::Length, "3/4 in - 1/8 in", 0.015875},
    {Kind::Length, "1 in/2", 0.0127},
    {Kind::Length, "1/2 in * 2", 0.0254},
    {Kind::Length, "2 * 1/2 in", 0.0254},
    {Kind::Length, "10 mm / (1 in / 2 in)", 0.02},
    {Kind::Length, "(3+4)*0.1 mm", 7e-4},
    {Kind::Length, "(3+4) × 0.1 mm", 7e-4},
    {Kind::Length, "3×4mm", 0.012},
    {Kind::Length, "3mm×4", 0.012},
    {Kind::Length, "10mm÷4", 0.0025},
    {Kind::Length, "10 mm − 4 mm", 0.006},
    {Kind::Length, "−1 mm", -1e-3},
    {Kind::Length, "- - 1 mm", 1e-3},
    {Kind::Length, "2*-3 mm", -6e-3},
    {Kind::Length, "((((1))))", 1e-3},
    {Kind::Length, "1+2+3", 6e-3},
    {Kind::Length, "1 + 2*3", 7e-3},
    {Kind::Length, "10-2-3", 5e-3},
    {Kind::Length, "12/3/2", 2e-3},
    // Gauges, d = 0.127 mm 92^((36-n)/39): anchors of ASTM B258 (check rows W-AWG-36 and W-AWG-4/0, seen)
    {Kind::Length, "36 AWG", 0.127e-3},
    {Kind::Length, "AWG 36", 0.127e-3},
    {Kind::Length, "awg36", 0.127e-3},
    {Kind::Length, "36awg", 0.127e-3},
    {Kind::Length, "4/0 AWG", 11.684e-3, 1e-15},
    {Kind::Length, "AWG 4/0", 11.684e-3, 1e-15},
    {Kind::Length, "0000 AWG", 11.684e-3, 1e-15},
    {Kind::Length, "1/0 AWG", 0.3249 * 0.0254, 2e-4},  // 0.3249 in, ASTM B258, from memory
    {Kind::Length, "2*36 AWG", 0.254e-3},
    {Kind::Length, "36 AWG + 10 um", 0.137e-3, 1e-15},
    // Areas and masses
    {Kind::Area, "120 mm2", 120e-6},
    {Kind::Area, "120 mm²", 120e-6},
    {Kind::Area, "1.2 cm2", 1.2e-4},
    {Kind::Area, "1 m²", 1},
    {Kind::Area, "10 mm * 12 mm", 120e-6, 1e-15},
    {Kind::Area, "(10 mm + 2 mm) * 1 cm", 120e-6, 1e-15},
    {Kind::Area, "1 in2", 6.4516e-4, 1e-15},
    {Kind::Mass, "120 g", 0.12},
    {Kind::Mass, "1.2 kg", 1.2},
    {Kind::Mass, "5 mg", 5e-6},
    // Pure numbers
    {Kind::Count, "12", 12},
    {Kind::Count, "1200/2", 600},
    {Kind::Count, "0.1*30", 3},
    {Kind::Count, "1k2", 1200},
    {Kind::Turns, "1200", 1200},
    {Kind::Turns, "12.5", 12.5},
    {Kind::Turns, "12,5 turns", 12.5},
    {Kind::Turns, "1 turn", 1},
    {Kind::Turns, "25/2", 12.5},
    {Kind::Number, "0.25", 0.25},
    {Kind::Number, "1/4", 0.25},
    {Kind::Number, "25 %", 0.25},
    {Kind::Share, "20 %", 0.2},
    {Kind::Share, "20%", 0.2},
    {Kind::Share, "0.2", 0.2},
    {Kind::Share, "1", 1},
    {Kind::Share, "1/4", 0.25},
    {Kind::Share, "100 %", 1},
    // Temperatures, levels, decibels, angles
    {Kind::Temperature, "20", 20},
    {Kind::Temperature, "20 °C", 20},
    {Kind::Temperature, "20 degC", 20},
    {Kind::Temperature, "20 C", 20},
    {Kind::Temperature, "-40 \u2103", -40},
    {Kind::LevelDbu, "4", 4},
    {Kind::LevelDbu, "+4 dBu", 4},
    {Kind::LevelDbu, "−10 dBu", -10},
    {Kind::LevelDbu, "4 dBu + 6 dB", 10},
    {Kind::LevelDbu, "6 dB + 4 dBu", 10},
    {Kind::LevelDbu, "4 dBu - 2*3 dB", -2},
    {Kind::LevelDbu, "0 dBV", 2.218487496, 1e-9},     // 20 lg(1/sqrt 0.6): row N-DBV, derived
    {Kind::LevelDbu, "-10 dBV", -7.781512504, 1e-9},  // published as -7.78: row N-10, seen
    {Kind::LevelDbu, "1.227653 V", 4, 1e-6},          // published as 1.228 V: row N-4, seen
    {Kind::LevelDbu, "1227.653 mV", 4, 1e-6},
    {Kind::LevelDbu, "2 * 12.27653 V / 2", 24, 1e-6},
    {Kind::Decibel, "-3 dB", -3},
    {Kind::Decibel, "-3", -3},
    {Kind::VoltageNoise, "1.2 nV/√Hz", 1.2e-9},
    {Kind::VoltageNoise, "5n", 5e-9},
    {Kind::VoltageNoise, "5 nV/sqrt(Hz)", 5e-9},
    {Kind::VoltageNoise, "5 nV", 5e-9},
    {Kind::CurrentNoise, "1 pA/√Hz", 1e-12},
    {Kind::CurrentNoise, "1 pA/rtHz", 1e-12},
    {Kind::Angle, "45", 45},
    {Kind::Angle, "45°", 45},
    {Kind::Angle, "45 deg", 45},
};

TEST(ReadQuantity, EveryRowIsReadAsMeant) {
    for (const Row& row : rows) {
        SCOPED_TRACE(row.text);
        double value = 0;
        ASSERT_NO_THROW(value = units::read(row.kind, row.text));
        if (row.tolerance == 0) {
            EXPECT_EQ(value, row.expected) << units::shortest(value);
        } else {
            EXPECT_NEAR(value, row.expected, row.tolerance * std::abs(row.expected));
        }
    }
    EXPECT_GE(std::size(rows), 120u);
}

TEST(ReadQuantity, ASingleNumberIsRoundedOnce) {
    // 0.7 mm times 0.001 in doubles is 7.000000000000001e-4 or not, by luck; the text decides.
    for (int i = 1; i < 20000; ++i) {
        const std::string digits = std::to_string(i);
        const std::string padded = std::string(5 - std::min<std::size_t>(5, digits.size()), '0') + digits;
        const std::string text = padded.substr(0, padded.size() - 3) + "." + padded.substr(padded.size() - 3) + " mm";
        EXPECT_EQ(units::read(Kind::Length, text), i / 1e6) << text;
    }
}

}  // namespace read_test
