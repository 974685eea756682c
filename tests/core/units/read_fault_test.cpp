// SPDX-License-Identifier: GPL-3.0-or-later
// What is refused, with the sentence that stands beside the field.
#include <gtest/gtest.h>

#include <random>
#include <string>

#include "units/fault.h"
#include "units/text.h"

namespace read_fault_test {

using units::Kind;

std::string refusal(Kind kind, std::string_view text) {
    try {
        return "was read as " + units::shortest(units::read(kind, text));
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(bad.faults.size(), 1u);
        EXPECT_EQ(bad.faults.front().place, "");
        return "found " + bad.faults.front().found + "; allowed is " + bad.faults.front().allowed + ".";
    }
}

const std::string ohms =
    "; allowed is a resistance in ohm, R or Ω, with a prefix p n u m k M G, such as \"4k7\" or \"4.7 kΩ\".";
const std::string length =
    "; allowed is a length in m, cm, mm, um, in, mil or AWG, such as \"0.1 mm\", \"1/2 in\" or \"38 AWG\".";
const std::string gauge = "; allowed is a gauge from 4/0 to 60, such as \"38 AWG\".";
const std::string range = "; allowed is a number between 1e-300 and 1e300.";
const std::string whole = "; allowed is a whole number, such as \"12\" or \"1200/2\".";
const std::string turns = "; allowed is a number of whole or half turns, such as \"1200\", \"12.5\" or \"1200/2\".";
const std::string share = "; allowed is a share from 0 to 1 or from 0 % to 100 %, such as \"0.2\" or \"20 %\".";
const std::string levels = "; allowed is a level plus or minus decibels, as in \"4 dBu + 6 dB\".";
const std::string operators = "; allowed is +, -, * or / between two numbers";
const std::string decimalSign = "; allowed is either \".\" or \",\" as decimal sign, and no grouping sign.";

struct Row {
    Kind kind;
    std::string text, sentence;
};

const Row rows[] = {
    {Kind::Resistance, "", "found nothing" + ohms},
    {Kind::Resistance, "   \t", "found nothing" + ohms},
    {Kind::Resistance, "abc", "found \"abc\"" + ohms},
    {Kind::Resistance, "sin(1)", "found \"sin(1)\"" + ohms},
    {Kind::Resistance, "sqrt(4)", "found \"sqrt(4)\"" + ohms},
    {Kind::Resistance, "1==1", "found \"==1\"" + ohms},
    {Kind::Resistance, "1 < 2", "found \"<\"" + ohms},
    {Kind::Resistance, "nan", "found \"nan\"" + ohms},
    {Kind::Resistance, "inf", "found \"inf\"" + ohms},
    {Kind::Resistance, "0x10", "found \"x10\"" + ohms},
    {Kind::Resistance, "1e999", "found \"1e999\"" + range},
    {Kind::Resistance, "1e-999", "found \"1e-999\"" + range},
    {Kind::Resistance, "1e99999999999999999999", "found \"1e99999999999999999999\"" + range},
    {Kind::Resistance, "1e300*1e300", "found \"1e300*1e300\"" + range},
    {Kind::Resistance, "5 kg", "found \"kg\"" + ohms},
    {Kind::Resistance, "4k7k", "found \"k\"; allowed is one unit for each number."},
    {Kind::Resistance, "4k7 kohm", "found \"kohm\"; allowed is one unit for each number."},
    {Kind::Resistance, "4.7k3", "found \"k3\"" + ohms},
    {Kind::Resistance, "4.7.2", "found \"4.7.2\"; allowed is one decimal sign in a number, and no grouping sign."},
    {Kind::Resistance, "1,200,300",
     "found \"1,200,300\"; allowed is one decimal sign in a number, and no grouping sign."},
    {Kind::Resistance, "1,200.5", "found \"1,200.5\"" + decimalSign},
    {Kind::Resistance, "0,5 + 0.5", "found \"0,5 + 0.5\"" + decimalSign},
    {Kind::Resistance, ".", "found \".\"; allowed is digits with the decimal sign, as in \"0.5\"."},
    {Kind::Resistance, "2 3", "found \"3\" without an operator before it" + operators + "."},
    {Kind::Resistance, "2(3)", "found \"(\" without an operator before it" + operators + "."},
    {Kind::Resistance, "(1", "found \"(\" without \")\"; allowed is as many \")\" as \"(\"."},
    {Kind::Resistance, "1)", "found \")\" without \"(\"; allowed is as many \"(\" as \")\"."},
    {Kind::Resistance, "()", "found \")\"" + ohms},
    {Kind::Resistance, "2*", "found the end where a number should stand" + ohms},
    {Kind::Resistance, "-", "found the end where a number should stand" + ohms},
    {Kind::Resistance, "*2", "found \"*2\"" + ohms},
    {Kind::Resistance, "5/0", "found \"5/0\"; allowed is a divisor other than zero."},
    {Kind::Resistance, "5/(2-2)", "found \"5/(2-2)\"; allowed is a divisor other than zero."},
    {Kind::Resistance, "1k*1k", "found \"1k*1k\"" + ohms},
    {Kind::Resistance, "10k/2k", "found the ratio \"10k/2k\", which has no unit" + ohms},
    {Kind::Resistance, "1000/4k7", "found \"1000/4k7\"" + ohms},
    {Kind::Resistance, std::string(33, '(') + "1",
     "found parentheses nested deeper than 32; allowed is at most 32 levels of parentheses."},
    {Kind::Resistance, std::string(401, '1'), "found more than 400 characters; allowed is at most 400 characters."},
    {Kind::Resistance, std::string("4\0k", 3), "found \"?k\"" + ohms},
    {Kind::Resistance, "\xFF\xFE", "found \"??\"" + ohms},
    {Kind::Resistance, "4 \xCE", "found \"?\"" + ohms},
    {Kind::Length, "", "found nothing" + length},
    {Kind::Length, "5 kg", "found \"kg\"" + length},
    {Kind::Length, "10 mm2", "found \"mm2\"" + length},
    {Kind::Length, "10 mm²", "found \"mm²\"" + length},
    {Kind::Length, "4k7", "found \"k7\"" + length},
    {Kind::Length, "100u", "found \"u\"" + length},
    {Kind::Length, "5 mm in", "found \"in\"" + length},
    {Kind::Length, "(5 mm) in", "found \"in\"; allowed is one unit for each number."},
    {Kind::Length, "1/(2 in)", "found \"1/(2 in)\"" + length},
    {Kind::Length, "1 in * 1 in", "found \"1 in * 1 in\"" + length},
    {Kind::Length, "10 mm/2 in", "found the ratio \"10 mm/2 in\", which has no unit" + length},
    {Kind::Length, "1 1/2 in", "found \"1\" without an operator before it" + operators + ", as in \"(1+1/2) in\"."},
    {Kind::Length, "1/2 + 1/4 in",
     "found \"1/2 + 1/4 in\"; allowed is numbers with a unit on both sides of \"+\" or \"-\"."},
    {Kind::Length, "5 mm + 1", "found \"5 mm + 1\"; allowed is numbers with a unit on both sides of \"+\" or \"-\"."},
    {Kind::Length, "AWG", "found \"AWG\"" + gauge},
    {Kind::Length, "AWG -3", "found \"AWG -3\"" + gauge},
    {Kind::Length, "-3 AWG", "found \"-3 AWG\"" + gauge},
    {Kind::Length, "99 AWG", "found \"99 AWG\"" + gauge},
    {Kind::Length, "5/0 AWG", "found \"5/0 AWG\"" + gauge},
    {Kind::Length, "1e999 mm", "found \"1e999\"" + range},
    {Kind::Area, "10 mm",
     "found \"10 mm\"; allowed is an area in m2, cm2, mm2 or in2, such as \"120 mm2\" or \"10 mm * 12 mm\"."},
    {Kind::Count, "12.5", "found \"12.5\"" + whole},
    {Kind::Count, "1200/7", "found \"1200/7\"" + whole},
    {Kind::Count, "5 m", "found \"m\"" + whole},
    {Kind::Turns, "1/3", "found \"1/3\"" + turns},
    {Kind::Turns, "12.25", "found \"12.25\"" + turns},
    {Kind::Share, "20", "found \"20\"" + share},
    {Kind::Share, "101 %", "found \"101 %\"" + share},
    {Kind::Share, "-0.1", "found \"-0.1\"" + share},
    {Kind::Temperature, "20 K", "found \"K\"; allowed is a temperature in °C or degC, such as \"20\" or \"40 °C\"."},
    {Kind::LevelDbu, "4 dB", "found \"4 dB\"; allowed is a level in dBu, dBV or V, since dB says a difference only."},
    {Kind::LevelDbu, "4 dBu + 4 dBu", "found \"4 dBu + 4 dBu\"" + levels},
    {Kind::LevelDbu, "4 dBu * 2", "found \"4 dBu * 2\"" + levels},
    {Kind::LevelDbu, "1 V + 6 dB", "found \"1 V + 6 dB\"" + levels},
    {Kind::LevelDbu, "0 V", "found \"0 V\"; allowed is a voltage above 0 V."},
    {Kind::LevelDbu, "-1 V", "found \"-1 V\"; allowed is a voltage above 0 V."},
    {Kind::LevelDbu, "-(10 dBV)", "found \"-(10 dBV)\"; allowed is the minus sign with the number, as in \"-10 dBu\"."},
    {Kind::LevelDbu, "3 dB * 2 dB", "found \"3 dB * 2 dB\"; allowed is decibels times or divided by a bare number."},
    {Kind::Frequency, "20 kilohertz",
     "found \"kilohertz\"; allowed is a frequency in Hz, with a prefix p n u m k M G, such as \"20 kHz\"."},
    {Kind::Angle, "45 rad", "found \"rad\"; allowed is an angle in degrees, such as \"45\" or \"45°\"."},
};

TEST(ReadFault, EveryRowHasItsSentence) {
    for (const Row& row : rows) EXPECT_EQ(refusal(row.kind, row.text), row.sentence) << row.text;
}

TEST(ReadFault, ALongTextIsQuotedInPart) {
    const std::string sentence = refusal(Kind::Resistance, std::string(100, 'z'));
    EXPECT_EQ(sentence, "found \"" + std::string(40, 'z') + "…\"" + ohms);
}

TEST(ReadFault, AnyBytesEitherReadOrAreRefused) {
    constexpr std::string_view likely[] = {"1",   "2",  "0",  ".",   ",", "k", "R",  "m", "in", "\"",
                                           "AWG", "/0", "(",  ")",   "+", "-", "*",  "/", " ",  "e",
                                           "µ",   "Ω",  "dB", "dBu", "V", "%", "°C", "−", "×",  "\xFF"};
    std::mt19937 chance(7);
    std::size_t read = 0, refused = 0;
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (auto parts = chance() % 12; parts > 0; --parts)
            if (chance() % 8 == 0)
                text += static_cast<char>(chance() % 256);
            else
                text += likely[chance() % std::size(likely)];
        const auto kind = static_cast<Kind>(chance() % 20);
        try {
            const double value = units::read(kind, text);
            ASSERT_TRUE(value - value == 0) << text;
            ++read;
        } catch (const units::BadInput& bad) {
            ASSERT_FALSE(bad.faults.front().found.empty());
            ++refused;
        }
    }
    EXPECT_GT(read, 200u);
    EXPECT_GT(refused, 10000u);
}

}  // namespace read_fault_test
