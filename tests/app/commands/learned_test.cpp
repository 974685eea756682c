// SPDX-License-Identifier: GPL-3.0-or-later
// cause and fit from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>
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

}  // namespace learned_test
