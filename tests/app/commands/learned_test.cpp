// SPDX-License-Identifier: GPL-3.0-or-later
// cause and fit from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <filesystem>
#include <fstream>

#include "command_line.h"
#include "exchange/read_file.h"
#include "units/csv_cell.h"
#include "units/text.h"

namespace learned_test {

const std::string unit = COILWRIGHT_SOURCE_DIR "/demo-projects/direct-box/direct-box.coilwright";

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

class LearnedVerbs : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string in(const std::string& name) { return folder.filePath(QString::fromStdString(name)).toStdString(); }
    void put(const std::string& name, const std::string& text) { std::ofstream(in(name)) << text; }
};

/// The plan's own limits say what good units read: half way between them nothing is wrong, and a third of the wire's
/// resistance missing is a fault of that winding.
TEST_F(LearnedVerbs, ReadingsOfALimitsTableAreJudged) {
    ASSERT_EQ(run({"write", unit, "--limits", in("limits.csv")}).code, 0);
    std::string names = "serial", good = "1", bad = "2";
    const std::string text = exchange::readFile(in("limits.csv"));
    std::string stage;
    for (const auto line : units::csvLines(text))
        stage = units::csvCells(line).size() > 1 ? units::csvCells(line)[1] : stage;
    for (const auto line : units::csvLines(text)) {
        const auto cells = units::csvCells(line);
        if (cells.size() != 8 || cells[1] != stage || !cells[3].starts_with("dcr.")) continue;
        const double middle = (*units::csvNumber(cells[5]) + *units::csvNumber(cells[6])) / 2;
        names += "," + cells[3] + " [" + cells[7] + "]";
        good += "," + units::shortest(middle);
        bad += "," + units::shortest(middle * (cells[3] == "dcr.S" ? 0.65 : 1));
    }
    ASSERT_NE(names.find("dcr.S"), std::string::npos);
    put("units.csv", names + "\n" + good + "\n" + bad + "\n");
    const Result result = run({"cause", unit, in("units.csv")});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_EQ(result.out.rfind("unit 1, 2 numbers compared\nno fault", 0), 0U) << result.out;
    const auto second = result.out.find("unit 2, 2 numbers compared\n");
    ASSERT_NE(second, std::string::npos) << result.out;
    const std::string told = result.out.substr(second);
    EXPECT_EQ(told.find("no fault: "), std::string::npos) << told;
    EXPECT_NE(told.find("winding S of thicker wire"), std::string::npos) << told;
    EXPECT_NE(told.find("(dcr.S): "), std::string::npos) << told;
    const Result one = run({"cause", unit, in("units.csv"), "--serial", "2", "--good", in("units.csv")});
    EXPECT_EQ(one.code, 0) << one.err;
    EXPECT_EQ(one.out.find("unit 1,"), std::string::npos);
}

TEST_F(LearnedVerbs, ACurveTeachesADesignThatIsWrittenBesideTheGivenOne) {
    ASSERT_EQ(run({"traces", unit, "--to", in("out"), "--from", "5", "--to", "20000", "--points", "31"}).code, 0);
    std::string text = "Freq (Hz),|Z| (ohm)\n";
    const std::string computed = exchange::readFile(in("out/impedance.csv"));
    for (const auto line : units::csvLines(computed)) {
        const auto cells = units::csvCells(line);
        if (cells.size() > 1 && units::csvNumber(cells[0]))
            text += cells[0] + "," + units::shortest(*units::csvNumber(cells[1])) + "\n";
    }
    put("z.csv", text);
    const std::string before = exchange::readFile(unit);
    const Result told = run({"fit", unit, in("z.csv"), "--only", "permeability"});
    ASSERT_EQ(told.code, 0) << told.err;
    EXPECT_NE(told.out.find("permeability of nickel-50: times "), std::string::npos) << told.out;
    EXPECT_NE(told.out.find("nothing was changed"), std::string::npos);
    const Result written =
        run({"fit", unit, in("z.csv"), "--only", "permeability,joint_gap", "--to", in("learned.coilwright")});
    ASSERT_EQ(written.code, 0) << written.err;
    EXPECT_EQ(exchange::readFile(unit), before);
    EXPECT_EQ(run({"figures", in("learned.coilwright")}).code, 0);
    EXPECT_NE(exchange::readFile(in("learned.coilwright")).find("Fitted to "), std::string::npos);
}

TEST_F(LearnedVerbs, BadInputIsOneSentence) {
    put("none.csv", "serial,dcr.X [ohm]\n1,5\n");
    expectRefused({"cause", unit, in("none.csv")},
                  "readings: found none that the test plan of this design names; allowed is tests by the names in its "
                  "limits: dcr.P, ratio.P.S.");
    expectRefused(
        {"cause", unit, in("none.csv"), "--serial", "7"},
        in("none.csv") + ": found no unit \"7\"; allowed is a line for each unit, as the verb units imports it.");
    expectRefused({"cause", unit}, "command line: found \"" + unit + "\"; allowed is DESIGN READINGS.");
    put("two.csv", "serial,dcr.P [ohm]\n1,5\n2,5\n");
    expectRefused(
        {"fit", unit, in("two.csv")},
        in("two.csv") + ": found 2 units; allowed is one, or --serial S of one: a lot is fitted unit by unit.");
    expectRefused(
        {"fit", unit, in("two.csv"), "--only", "colour"},
        "command line: --only: found \"colour\"; allowed is some of permeability, joint_gap, sheet_thickness, "
        "permittivity, tightness, wire_stretch.");
}

TEST_F(LearnedVerbs, MatchNamesTheDesignOfAUnitWithoutPapers) {
    const std::string demos = COILWRIGHT_SOURCE_DIR "/demo-projects";
    put("unit.csv",
        "figure,value\ndcr.1,5.4 ohm\nratio.1.2,7.0\ninductance_1kHz.1,3.2 H\nleakage_10kHz.1.2,270 uH,3 %\n");
    const Result told = run({"match", demos, in("unit.csv")});
    EXPECT_EQ(told.code, 0) << told.err;
    for (const char* words : {"4 readings, 5 designs; 1 can be the one", "microphone-input.coilwright: 4 readings",
                              "1 is its P, 2 is its S", "dcr.1  read 5.40 Ω, computed 5.3"})
        EXPECT_NE(told.out.find(words), std::string::npos) << words << "\n" << told.out;
    put("few.csv", "figure,value\ngain_1kHz,40 dB\n");
    EXPECT_NE(run({"match", demos, in("few.csv")}).out.find("none fits; this comes nearest"), std::string::npos);
    // A twin that differs in nothing that a bench reads stays beside it, and the difference is told.
    std::filesystem::create_directory(in("shelf"));
    for (const char* name : {"a", "b"})
        std::filesystem::copy_file(demos + "/microphone-input/microphone-input.coilwright",
                                   in("shelf/" + std::string(name) + ".coilwright"));
    const Result twins = run({"match", in("shelf"), in("unit.csv")});
    EXPECT_NE(twins.out.find("2 can be the one"), std::string::npos) << twins.out;
    EXPECT_NE(twins.out.find("no figure would part them"), std::string::npos) << twins.out;
    put("bad.csv", "figure,value\ncolour.1,blue\n");
    expectRefused({"match", demos, in("bad.csv")},
                  in("bad.csv") +
                      ": line 2: found \"colour.1\"; allowed is a figure that the design has, as "
                      "`coilwright figures` names it.");
    std::filesystem::create_directory(in("empty"));
    expectRefused({"match", in("empty"), in("unit.csv")},
                  in("empty") + ": found no design; allowed is a design, or a folder with designs in it.");
}

}  // namespace learned_test
