// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of instruments, all invented, in many shapes: read alike, or refused with line, column, found and allowed.
#include "exchange/measured_table.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "units/fault.h"

namespace measured_table_test {

using exchange::AngleForm;
using exchange::guessedPicking;
using exchange::MeasuredTable;
using exchange::Picking;
using exchange::PickingWish;
using exchange::readMeasuredTable;
using exchange::ValueForm;
using measured::CurveKind;

std::string sentenceOf(const std::string& text) {
    try {
        (void)readMeasuredTable(text, "a.csv");
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "read";
}

struct Shape {
    const char* what;
    const char* text;
};
/// Every one says: 100 Hz 0 dB -10 degrees, 1 kHz -6 dB 20 degrees.
class EveryShape : public testing::TestWithParam<Shape> {};

TEST_P(EveryShape, SaysTheSame) {
    const MeasuredTable table = readMeasuredTable(GetParam().text, "a.csv");
    ASSERT_EQ(table.curves.size(), 2U);
    EXPECT_EQ(table.curves[0].kind, CurveKind::Response);
    EXPECT_EQ(table.curves[1].kind, CurveKind::Phase);
    for (const auto& curve : table.curves) ASSERT_EQ(curve.frequency, (std::vector<double>{100, 1000}));
    EXPECT_NEAR(table.curves[0].value[0], 0, 1e-3);
    EXPECT_NEAR(table.curves[0].value[1], -6, 1e-3);
    EXPECT_NEAR(table.curves[1].value[0], -10, 1e-2);
    EXPECT_NEAR(table.curves[1].value[1], 20, 1e-2);
}

INSTANTIATE_TEST_SUITE_P(
    Tables, EveryShape,
    testing::Values(
        Shape{"plain", "100,0,-10\n1000,-6,20\n"},
        Shape{"named", "frequency_Hz,magnitude_dB,phase_deg\n100,0,-10\n1000,-6,20\n"},
        Shape{"semicolons and decimal commas", "Freq. (Hz);Gain (dB);Phase (deg)\n100,0;0,0;-10,0\n1000,0;-6,0;20,0\n"},
        Shape{"tabs, kHz, old line ends", "f [kHz]\tGain [dB]\tPhase [deg]\r0.1\t0\t-10\r1\t-6\t20\r"},
        Shape{"tabs and decimal commas", "f [kHz]\tGain [dB]\tPhase [deg]\n0,1\t0\t-10\n1\t-6,0\t20\n"},
        Shape{"blanks", "* an invented analyser\n  100   0.0  -10\n 1000  -6.0   20\n"},
        Shape{"blanks and decimal commas", "100 0,0 -10\n1000 -6,0 20\n"},
        Shape{"ratio", "Frequency,Ratio,Phase\n100,1,-10\n1000,0.501187234,20\n"},
        Shape{"volts", "Freq/Hz,Vout (mV),Phase/deg\n100,1000,-10\n1000,501.187234,20\n"},
        Shape{"dBV", "Freq/Hz,Level dBV,Phase/deg\n100,0,-10\n1000,-6,20\n"},
        Shape{"dBu", "Freq/Hz,Level dBu,Phase/deg\n100,2.218487496,-10\n1000,-3.781512504,20\n"},
        Shape{"radians", "Hz,dB,phase (rad)\n100,0,-0.174532925\n1000,-6,0.34906585\n"},
        Shape{"real and imaginary", "freq,re,im\n100,0.984807753,-0.173648178\n1000,0.470961956,0.171416134\n"},
        Shape{"columns in another order", "Phase deg,Gain dB,Frequency Hz\n-10,0,100\n20,-6,1000\n"},
        Shape{"further columns", "No,Frequency (Hz),Phase (deg),Gain (dB)\n1,100,-10,0\n2,1000,20,-6\n"},
        Shape{"units in a line of their own", "Frequency,Gain,Phase\nkHz,dB,deg\n0.1,0,-10\n1,-6,20\n"},
        Shape{"a head of words", "Invented analyser 1\nDate, 2026-11-27\n\nHz,dB,deg\n100,0,-10\n1000,-6,20\n"},
        Shape{"quotes",
              "\"Frequency, set\",\"Gain dB\",\"Phase deg\"\n\"100\",\"0\",\"-10\"\n\"1000\",\"-6\",\"20\"\n"},
        Shape{"remarks within", "100,0,-10\n# paused\n1000,-6,20\n\n"},
        Shape{"a mark of UTF-8, exponents",
              "\xEF\xBB\xBF"
              "f,dB,deg\n1e2,0E0,-1.0e+1\n+1.000E+03,-6,20\n"},
        Shape{"degree sign", "f (Hz),Gain (dB),Phase (°)\n100,0,-10\n1000,-6,20\n"}),
    [](const auto& shape) { return "Case" + std::to_string(shape.index); });

TEST(MeasuredTable, ImpedanceDistortionAndNoiseAreKnownByTheirNames) {
    const auto ohms = readMeasuredTable("Freq (Hz),|Z| (kOhm),Phase (deg)\n100,1.5,30\n", "a.csv");
    ASSERT_EQ(ohms.curves.size(), 2U);
    EXPECT_EQ(ohms.curves[0].kind, CurveKind::Impedance);
    EXPECT_DOUBLE_EQ(ohms.curves[0].value[0], 1500);
    EXPECT_EQ(ohms.curves[1].kind, CurveKind::ImpedanceAngle);
    const auto parts = readMeasuredTable("Freq (Hz),R (ohm),X (ohm)\n100,3,4\n", "a.csv");
    EXPECT_DOUBLE_EQ(parts.curves[0].value[0], 5);
    EXPECT_NEAR(parts.curves[1].value[0], 53.130102, 1e-6);
    const auto thd = readMeasuredTable("Freq (Hz),THD (%)\n20,0.15\n", "a.csv");
    EXPECT_EQ(thd.curves.at(0).kind, CurveKind::Distortion);
    EXPECT_DOUBLE_EQ(thd.curves[0].value[0], 0.15);
    const auto thdDb = readMeasuredTable("Freq (Hz),THD (dB)\n20,-60\n", "a.csv");
    EXPECT_NEAR(thdDb.curves.at(0).value[0], 0.1, 1e-12);
    const auto noise = readMeasuredTable("Freq (Hz),Noise (nV/rtHz)\n1000,4.2\n", "a.csv");
    EXPECT_EQ(noise.curves.at(0).kind, CurveKind::Noise);
}

TEST(MeasuredTable, AWishRulesOverTheGuess) {
    const std::string text = "Hz,dB left,dB right,deg\n100,0,-1,5\n";
    PickingWish wish;
    wish.value = 2;
    const Picking picking = guessedPicking(text, "a.csv", wish);
    EXPECT_EQ(picking.value, 2U);
    EXPECT_EQ(picking.second, 3U);
    EXPECT_DOUBLE_EQ(readMeasuredTable(text, "a.csv", picking).curves[0].value[0], -1);
    const std::string bare = "1,4\n2,4\n";
    PickingWish inVolts;
    inVolts.form = ValueForm::Volt;
    inVolts.emf = 2;
    const auto volts = readMeasuredTable(bare, "a.csv", guessedPicking(bare, "a.csv", inVolts));
    EXPECT_NEAR(volts.curves[0].value[0], 20 * std::log10(2), 1e-12);
}

TEST(MeasuredTable, AColumnThatIsNotThereIsRefused) {
    const std::string text = "f,re,im\n100,0,1\n";
    for (const std::size_t none : {3, 199}) {
        for (int which = 0; which < 3; ++which) {
            PickingWish wish;
            (which == 0 ? wish.frequency : which == 1 ? wish.value : wish.second) = none;
            try {
                (void)readMeasuredTable(text, "a.csv", guessedPicking(text, "a.csv", wish));
                ADD_FAILURE();
            } catch (const units::BadInput& bad) {
                EXPECT_EQ(std::string(bad.what()),
                          "a.csv: found column " + std::to_string(none + 1) + "; allowed is one of 3 columns.");
            }
        }
    }
}

TEST(MeasuredTable, ThePreviewShowsNamesAndFirstRowsAsTheyStand) {
    const std::string text = "words\nf;a [dB]\n1,0;2,0\n# x\n3;4\n5;6\n";
    const auto shown = exchange::preview(text, guessedPicking(text, "a.csv"), 2);
    EXPECT_EQ(shown.columns, (std::vector<std::string>{"f", "a [dB]"}));
    EXPECT_EQ(shown.rows, (std::vector<std::vector<std::string>>{{"1,0", "2,0"}, {"3", "4"}}));
}

TEST(MeasuredTable, RowsAreOrderedAndThoseWithoutANumberLeftOut) {
    const auto table = readMeasuredTable("f,dB\n1000,1\n100,2\n500,NaN\n1000,3\n200,---\n300,inf\n", "a.csv");
    ASSERT_EQ(table.curves.size(), 1U);
    EXPECT_EQ(table.curves[0].frequency, (std::vector<double>{100, 1000}));
    EXPECT_EQ(table.curves[0].value, (std::vector<double>{2, 1}));
    EXPECT_EQ(table.remarks, (std::vector<std::string>{"Rows were put in order of frequency.",
                                                       "1 row of a frequency that had a row already left out.",
                                                       "3 rows without a number left out."}));
}

TEST(MeasuredTable, RefusesWithFileLineColumnFoundAndAllowed) {
    EXPECT_EQ(sentenceOf(""),
              "a.csv: found no line of two numbers or more; allowed is a table with comma, semicolon, "
              "tab or blank between its columns.");
    EXPECT_EQ(sentenceOf("f,dB\n100,0\n200,x1\n"),
              "a.csv: line 3, column 2: found \"x1\"; allowed is a number, as -12.5 or 1.2e-3.");
    EXPECT_EQ(sentenceOf("f;dB\n100,5;0\n200;1.5\n300,5;1\n"),
              "a.csv: line 3, column 2: found \"1.5\"; allowed is a number, as -12,5 or 1,2e-3.");
    EXPECT_EQ(sentenceOf("f,dB,deg\n100,0,1\n200,0\n"),
              "a.csv: line 3, column 3: found 2 cells; allowed is a row with that column.");
    EXPECT_EQ(sentenceOf("f,dB\n0,1\n10,2\n"), "a.csv: line 2, column 1: found 0; allowed is a frequency above 0.");
    EXPECT_EQ(sentenceOf(std::string("1,2\n\0", 5)),
              "a.csv: found bytes that are no text; allowed is text in ASCII or "
              "UTF-8.");
    std::string wide = "1";
    for (int k = 0; k < 300; ++k) wide += ",1";
    EXPECT_EQ(sentenceOf(wide + "\n"), "a.csv: found 301 columns; allowed is 200 columns at most.");
    EXPECT_EQ(sentenceOf(std::string(11000000, '1')), "a.csv: found more than 10 MB; allowed is 10 MB at most.");
}

TEST(MeasuredTable, AnyBytesAreReadOrRefused) {
    std::mt19937 random(11);
    const std::string sound = "Freq (kHz);Gain (dB);Phase (rad)\n# words\n0,1;0,0;-1e-3\n1,0;-6,02;NaN\n10;\"3\";2\n";
    int refused = 0;
    for (int k = 0; k < 5000; ++k) {
        std::string text = sound;
        for (int n = 0; n < 4; ++n) text[random() % text.size()] = static_cast<char>(random() % 256);
        try {
            for (const auto& curve : readMeasuredTable(text, "a.csv").curves) {
                ASSERT_EQ(curve.frequency.size(), curve.value.size());
                for (const double value : curve.value) ASSERT_TRUE(std::isfinite(value));
            }
        } catch (const units::BadInput& bad) {
            ++refused;
            ASSERT_TRUE(bad.faults.front().place.starts_with("a.csv")) << bad.what();
        }
    }
    EXPECT_GT(refused, 500);
    EXPECT_LT(refused, 5000);
}

}  // namespace measured_table_test
