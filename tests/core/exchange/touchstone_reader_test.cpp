// SPDX-License-Identifier: GPL-3.0-or-later
// Touchstone files read: the specification's own examples, our own files, wild ones and broken ones.
// Source: Touchstone File Format Specification 2.0, IBIS Open Forum, 2009, examples 4 to 14, 17 and 18; read as copies
// in two public test collections, which agree; their rules in a public digest of the text.
#include "exchange/touchstone_reader.h"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/touchstone.h"
#include "measured/comparison.h"
#include "measured/terminated.h"
#include "units/fault.h"

namespace touchstone_reader_test {

using exchange::readTouchstone;
using measured::Complex;
using measured::NetworkData;
using measured::Parameter;

Complex polar(double size, double degrees) {
    return std::polar(size, degrees * std::numbers::pi / 180);
}

void expectNear(Complex found, Complex wanted, double tolerance = 1e-12) {
    EXPECT_NEAR(found.real(), wanted.real(), tolerance);
    EXPECT_NEAR(found.imag(), wanted.imag(), tolerance);
}

std::string sentenceOf(const std::string& text, const std::string& file = "unit.s2p") {
    try {
        (void)readTouchstone(text, file);
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "read";
}

constexpr const char* rows =
    "5.00000 0.60 161.24 0.40 -42.20 0.42 -66.58 0.53 -79.34 !row 1\n"
    "0.40 -42.20 0.60 161.20 0.53 -79.34 0.42 -66.58 !row 2\n"
    "0.42 -66.58 0.53 -79.34 0.60 161.24 0.40 -42.20 !row 3\n"
    "0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4\n";

TEST(TouchstoneSpecification, Example8IsOnePortOfOneFrequency) {
    const NetworkData data = readTouchstone(
        "!1-port S-parameter file, single frequency point\n# MHz S MA R 50\n!freq magS11 angS11\n2.000 0.894 -12.136\n",
        "example.s1p");
    EXPECT_EQ(data.ports, 1);
    ASSERT_EQ(data.frequencies, std::vector<double>{2e6});
    expectNear(data.at(0, 0, 0), polar(0.894, -12.136));
    EXPECT_EQ(data.reference, std::vector<double>{50});
}

TEST(TouchstoneSpecification, Examples9And10AreTheSameImpedanceNormalisedAndNot) {
    const NetworkData first = readTouchstone(
        "# MHz Z MA R 75\n!freq magZ11 angZ11\n100 0.99 -4\n200 0.80 -22\n300 0.707 -45\n400 0.40 -62\n500 0.01 -89\n",
        "example.s1p");
    const NetworkData second = readTouchstone(
        "[Version] 2.0\n# MHz Z MA\n[Number of Ports] 1\n[Number of Frequencies] 5\n[Reference] 20.0\n[Network Data]\n"
        "!freq magZ11 angZ11\n100 74.25 -4\n200 60 -22\n300 53.025 -45\n400 30 -62\n500 0.75 -89\n[End]\n",
        "example.ts");
    ASSERT_EQ(first.frequencies, second.frequencies);
    for (std::size_t k = 0; k < 5; ++k) expectNear(first.at(k, 0, 0), second.at(k, 0, 0), 1e-9);
    EXPECT_EQ(second.reference, std::vector<double>{20});
}

TEST(TouchstoneSpecification, Examples11And12AreHybridParametersByColumn) {
    const std::string numbers = "2 .95 -26 3.57 157 .04 76 .66 -14\n";
    const NetworkData first = readTouchstone("# kHz H MA R 1\n" + numbers, "example.s2p");
    const NetworkData second = readTouchstone(
        "[Version] 2.0\n# kHz H MA R 1\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] 1\n"
        "[Matrix Format] Full\n[Network Data]\n! freq magH11 ...\n" +
            numbers + "[End]\n",
        "example.ts");
    for (const NetworkData& data : {first, second}) {
        EXPECT_EQ(data.parameter, Parameter::H);
        ASSERT_EQ(data.frequencies, std::vector<double>{2000});
        expectNear(data.at(0, 0, 0), polar(0.95, -26));
        expectNear(data.at(0, 1, 0), polar(3.57, 157));
        expectNear(data.at(0, 0, 1), polar(0.04, 76));
        expectNear(data.at(0, 1, 1), polar(0.66, -14));
    }
}

TEST(TouchstoneSpecification, Example13IsTwoPortsInRealAndImaginaryParts) {
    const NetworkData data = readTouchstone(
        "# GHz S RI R 50.0\n1.0000 0.3926 -0.1211 -0.0003 -0.0021 -0.0003 -0.0021 0.3926 -0.1211\n"
        "2.0000 0.3517 -0.3054 -0.0096 -0.0298 -0.0096 -0.0298 0.3517 -0.3054\n"
        "10.000 0.3419 0.3336 -0.0134 0.0379 -0.0134 0.0379 0.3419 0.3336\n",
        "example.s2p");
    ASSERT_EQ(data.frequencies, (std::vector<double>{1e9, 2e9, 1e10}));
    EXPECT_EQ(data.at(2, 1, 0), Complex(-0.0134, 0.0379));
    EXPECT_EQ(data.at(1, 1, 1), Complex(0.3517, -0.3054));
}

TEST(TouchstoneSpecification, Example14IsFourPortsRowByRow) {
    const NetworkData data = readTouchstone(std::string("# GHz S MA R 50\n") + rows +
                                                "6.00000 0.57 150.37 0.40 -44.34 0.41 -81.24 0.57 -95.77 !row 1\n"
                                                "0.40 -44.34 0.57 150.37 0.57 -95.77 0.41 -81.24 !row 2\n"
                                                "0.41 -81.24 0.57 -95.77 0.57 150.37 0.40 -44.34 !row 3\n"
                                                "0.57 -95.77 0.41 -81.24 0.40 -44.34 0.57 150.37 !row 4\n",
                                            "example.s4p");
    ASSERT_EQ(data.frequencies.size(), 2U);
    expectNear(data.at(0, 0, 3), polar(0.53, -79.34));
    expectNear(data.at(0, 1, 1), polar(0.60, 161.20));
    expectNear(data.at(1, 2, 0), polar(0.41, -81.24));
}

TEST(TouchstoneSpecification, Examples4To6AreOneMatrixFullAndLower) {
    const std::string head = "[Version] 2.0\n# GHz S MA R 50\n[Number of Ports] 4\n";
    const NetworkData apart = readTouchstone(
        head + "[Reference]\n50 75 0.01 0.01\n[Number of Frequencies] 1\n[Network Data]\n" + rows, "example.ts");
    const NetworkData full = readTouchstone(head +
                                                "[Number of Frequencies] 1\n[Reference] 50 75 0.01 0.01\n"
                                                "[Matrix Format] Full\n[Network Data]\n" +
                                                rows,
                                            "example.ts");
    const NetworkData lower = readTouchstone(
        head +
            "[Number of Frequencies] 1\n[Reference] 50 75\n0.01 0.01\n[Matrix Format] Lower\n[Network Data]\n"
            "5.00000 0.60 161.24 !row 1\n0.40 -42.20 0.60 161.20 !row 2\n0.42 -66.58 0.53 -79.34 0.60 161.24\n"
            "0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4\n[End]\n",
        "example.ts");
    for (const NetworkData& data : {apart, full, lower}) {
        EXPECT_EQ(data.reference, (std::vector<double>{50, 75, 0.01, 0.01}));
        ASSERT_EQ(data.values.size(), 1U);
        EXPECT_EQ(data.values, full.values);
    }
}

TEST(TouchstoneSpecification, Examples17And18HaveNoiseThatIsPassedOver) {
    const std::string network = "2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n";
    const NetworkData first = readTouchstone(
        "#\n! NETWORK PARAMETERS\n" + network + "! NOISE\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n", "example.s2p");
    const NetworkData second = readTouchstone(
        "[Version] 2.0\n#\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] 2\n[Number of "
        "Noise Frequencies] 2\n[Reference] 50 25.0\n[Network Data]\n" +
            network + "[Noise Data]\n4 .7 .64 69 19\n18 2.7 .46 -33 20\n[End]\n",
        "example.ts");
    for (const NetworkData& data : {first, second}) {
        ASSERT_EQ(data.frequencies, (std::vector<double>{2e9, 22e9}));
        expectNear(data.at(1, 1, 0), polar(1.30, 40));
        EXPECT_EQ(data.remarks, std::vector<std::string>{"Noise parameters in the file are not read."});
    }
    EXPECT_EQ(second.reference, (std::vector<double>{50, 25}));
}

TEST(TouchstoneReader, LinesWrapAnywhereAndNumbersSayWhereAMatrixEnds) {
    const NetworkData wrapped =
        readTouchstone("# hz s ri r 50\r1 1\t0 2 0\r\n3 0 4 0\n\n! words\n2 5 0 6 0 7\n0 8 0", "unit.s2p");
    ASSERT_EQ(wrapped.frequencies, (std::vector<double>{1, 2}));
    EXPECT_EQ(wrapped.at(0, 1, 0), Complex(2));
    EXPECT_EQ(wrapped.at(0, 0, 1), Complex(3));
    EXPECT_EQ(wrapped.at(1, 1, 1), Complex(8));
}

TEST(TouchstoneReader, RowsFirstUpperAndAReferenceForEachPort) {
    const NetworkData rowsFirst = readTouchstone(
        "[version] 2.0\n# Hz S RI\n[number of ports] 2\n[Two-Port Data Order] 12_21\n[Network Data]\n1 1 0 2 0 3 0 4 "
        "0\n",
        "unit.ts");
    EXPECT_EQ(rowsFirst.at(0, 0, 1), Complex(2));
    const NetworkData upper = readTouchstone(
        "[Version] 2.0\n# Hz S RI\n[Number of Ports] 3\n[Matrix Format] Upper\n[Network Data]\n"
        "1 1 0 2 0 3 0\n4 0 5 0\n6 0\n",
        "unit.ts");
    EXPECT_EQ(upper.at(0, 2, 0), Complex(3));
    EXPECT_EQ(upper.at(0, 1, 2), Complex(5));
    const NetworkData each = readTouchstone("# Hz Y RI R 50 200\n1 1 0 2 0 2 0 4 0\n", "unit.s2p");
    EXPECT_EQ(each.reference, (std::vector<double>{50, 200}));
    expectNear(each.at(0, 0, 0), 1.0 / 50);
    expectNear(each.at(0, 0, 1), 2.0 / 100);
    expectNear(each.at(0, 1, 1), 4.0 / 200);
}

TEST(TouchstoneReader, DecibelsAndTheNumberOfPortsFromTheFirstLine) {
    const NetworkData one = readTouchstone("# Hz S DB\n1 -20 90\n2 0 0\n", "sweep.txt");
    EXPECT_EQ(one.ports, 1);
    expectNear(one.at(0, 0, 0), Complex(0, 0.1));
    EXPECT_EQ(readTouchstone("# Hz S RI\n1 1 0 2 0 3 0 4 0\n2 1 0 2 0 3 0 4 0\n", "sweep.txt").ports, 2);
    EXPECT_EQ(readTouchstone(std::string("# Hz S MA\n") + rows, "sweep.txt").ports, 4);
}

TEST(TouchstoneReader, RefusesWithLineFoundAndAllowed) {
    EXPECT_EQ(sentenceOf(""),
              "unit.s2p: line 1: found nothing; allowed is a Touchstone file, with an option line that begins with #.");
    EXPECT_EQ(sentenceOf("1 2 3\n"),
              "unit.s2p: line 1: found numbers; allowed is an option line, as # MHz S RI R 50, ahead of them.");
    EXPECT_EQ(sentenceOf("# Hz T RI\n"),
              "unit.s2p: line 1: found \"t\"; allowed is Hz, kHz, MHz or GHz; S, Y, Z, H or G; RI, MA or DB; R and a "
              "resistance.");
    EXPECT_EQ(sentenceOf("# Hz S RI R -50\n"),
              "unit.s2p: line 1: found \"-50\"; allowed is a resistance above 0 ohm behind R.");
    EXPECT_EQ(sentenceOf("# Hz S RI\n1 2,5 0 0 0 0 0 0 0\n"),
              "unit.s2p: line 2: found \"2,5\"; allowed is a number, as -12.5 or 1.2e-3.");
    EXPECT_EQ(sentenceOf("# Hz S RI\n1 0 0 0 0 0 0 0 nan\n"),
              "unit.s2p: line 2: found \"nan\"; allowed is a number, as -12.5 or 1.2e-3.");
    EXPECT_EQ(
        sentenceOf("# Hz S RI\n1 0 0 0 0 0 0 0 0\n2 0 0 0\n"),
        "unit.s2p: line 3: found 4 numbers of a last frequency; allowed is 9 numbers for each frequency of 2 ports.");
    EXPECT_EQ(
        sentenceOf("# Hz S RI\n2 0 0 0 0 0 0 0 0\n1 0 0 0 0 0 0 0 0\n"),
        "unit.s2p: line 3: found frequency 1 behind a higher one; allowed is rising frequencies, 9 numbers each.");
    EXPECT_EQ(sentenceOf("# Hz H RI\n1 0 0\n", "a.s1p"),
              "a.s1p: line 1: found hybrid parameters of 1 ports; allowed is two ports.");
    EXPECT_EQ(sentenceOf("[Version] 3.0\n# Hz S RI\n"),
              "unit.s2p: line 1: found \"3.0\"; allowed is version 2.0 or 2.1; older files have no [Version].");
    EXPECT_EQ(sentenceOf("[Version] 2.0\n# Hz S RI\n[Number of Ports] 99\n"),
              "unit.s2p: line 3: found \"99\"; allowed is a whole number from 1 to 32 behind [number of ports].");
    EXPECT_EQ(
        sentenceOf("[Version] 2.0\n# Hz S RI\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n1 0 0\n"),
        "unit.s2p: line 6: found 1 frequencies; allowed is 2, as [Number of Frequencies] says.");
    EXPECT_EQ(sentenceOf("[Version] 2.0\n# Hz S RI\n[Number of Ports] 2\n[Mixed-Mode Order] D1,2 C1,2\n"),
              "unit.s2p: line 4: found parameters of mixed modes; allowed is parameters of single ports.");
}

TEST(TouchstoneReader, AnyBytesAreReadOrRefused) {
    std::mt19937 random(7);
    const std::string whole = std::string(
                                  "[Version] 2.0\n# GHz S MA R 50\n[Number of Ports] 4\n[Reference] 50 75 1 1\n"
                                  "[Matrix Format] Lower\n[Network Data]\n") +
                              rows + "[End]\n";
    const std::string old = std::string("# GHz S DB R 50\n") + rows;
    int refused = 0;
    for (int k = 0; k < 4000; ++k) {
        std::string text = k % 2 == 0 ? whole : old;
        for (int n = 0; n < 3; ++n) {
            const auto at = random() % text.size();
            if (random() % 3 == 0)
                text.resize(at + 1);
            else
                text[at] = static_cast<char>(random() % 256);
        }
        try {
            const NetworkData data = readTouchstone(text, "unit.s4p");
            ASSERT_EQ(data.values.size(), data.frequencies.size());
            ASSERT_EQ(data.reference.size(), static_cast<std::size_t>(data.ports));
        } catch (const units::BadInput& bad) {
            ++refused;
            ASSERT_TRUE(bad.faults.front().place.starts_with("unit.s4p: line ")) << bad.what();
        }
    }
    EXPECT_GT(refused, 1000);
}

struct Case {
    const char* file;
    const char* hookUp;
    int ports;
};
class ReadBack : public testing::TestWithParam<Case> {};

/// Our own file of a unit, put back into its hook-up, does what the design computes: two ways to the same numbers.
TEST_P(ReadBack, OurOwnFileDoesInItsHookUpWhatTheDesignComputes) {
    const auto& tried = GetParam();
    const auto shop = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    const std::string path = std::string(COILWRIGHT_SOURCE_DIR) + "/" + tried.file;
    const auto design = exchange::readDesign(exchange::readFile(path), path, shop).design;
    const auto answerAt = [&](std::vector<double> at) {
        return analysis::answer(*design, shop, nullptr, {}, {tried.hookUp, std::move(at), false});
    };
    const std::string name = "unit.s" + std::to_string(tried.ports) + "p";
    const NetworkData data = readTouchstone(exchange::touchstone(*design, *answerAt({1000}), name), name);
    ASSERT_EQ(data.ports, tried.ports);
    const auto answer = answerAt(data.frequencies);
    const auto unit = measured::terminated(data, *design::hookUp(*design, tried.hookUp), "", name);
    ASSERT_GE(unit.curves.size(), 2U);
    for (const auto& curve : unit.curves) {
        const auto to = measured::counterpart(curve.kind, "");
        const auto c = measured::comparison(curve, *answer->trace(to.trace), to.curve);
        EXPECT_GT(c.inside, 100U);
        const bool angle = c.kind == measured::CurveKind::Phase || c.kind == measured::CurveKind::ImpedanceAngle;
        const bool common = unit.curves.size() == 2;
        EXPECT_LT(std::abs(c.largest), angle    ? 0.1
                                       : common ? 0.01
                                                : 0.002)
            << measured::word(c.kind) << " at " << c.where;
    }
}

INSTANTIATE_TEST_SUITE_P(HookUps, ReadBack,
                         testing::Values(Case{"tests/references/open_1_shielded_step_up.coilwright", "normal", 3},
                                         Case{"tests/references/open_1_shielded_step_up.coilwright", "common mode", 3},
                                         Case{"tests/references/open_2_interleaved_line.coilwright", "normal", 2},
                                         Case{"demo-projects/line-unit/line-unit.coilwright", "series to series", 4}),
                         [](const auto& tried) { return "Case" + std::to_string(tried.index); });

}  // namespace touchstone_reader_test
