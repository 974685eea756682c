// SPDX-License-Identifier: GPL-3.0-or-later
// seek from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>

#include "command_line.h"

namespace seek_test {

const std::string ribbon = COILWRIGHT_SOURCE_DIR "/demo-projects/ribbon-step-up/ribbon-step-up.coilwright";
const std::string line = COILWRIGHT_SOURCE_DIR "/demo-projects/line-unit/line-unit.coilwright";

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

TEST(SeekVerb, RefusesWhatItDoesNotKnow) {
    expectRefused({"seek", ribbon, "--keep", "0"},
                  "command line: --keep: found \"0\"; allowed is a whole number from 1 to 50.");
    expectRefused({"seek", ribbon, "--hold", "core,size"},
                  "command line: --hold: found \"size\"; allowed is core, turns, wires, order, insulation, with commas "
                  "between.");
    expectRefused({"seek", ribbon, "--hold", "insulation"},
                  "command line: --hold: found insulation without the order that it lies in; allowed is order beside "
                  "insulation.");
    expectRefused({"seek", ribbon, "--damping", "much"},
                  "command line: --damping: found \"much\"; allowed is flat or step.");
    expectRefused({"seek", ribbon, "--damping", "flat", "--keep", "3"},
                  "command line: --damping: found --keep beside it; allowed is --hook-up and --to beside it.");
    expectRefused({"seek", ribbon, "--hook-up", "normal"},
                  "command line: --hook-up: found no damping to seek there; allowed is it beside --damping flat or "
                  "step.");
}

TEST(SeekVerb, WritesCandidatesThatOpen) {
    QTemporaryDir folder;
    const std::string to = folder.path().toStdString() + "/found";
    const Result found = run({"seek", ribbon, "--keep", "2", "--to", to, "--hold", "core,order,insulation"});
    ASSERT_EQ(found.code, 0) << found.err;
    EXPECT_NE(found.out.find("with a part held"), std::string::npos);
    EXPECT_NE(found.out.find("S | foil | P | S"), std::string::npos);
    EXPECT_NE(found.out.find(to + "/candidate-1.coilwright"), std::string::npos);
    const Result figures = run({"figures", to + "/candidate-1.coilwright"});
    EXPECT_EQ(figures.code, 0) << figures.err;
}

TEST(SeekVerb, WritesADampedDesignThatOpens) {
    QTemporaryDir folder;
    const std::string to = folder.path().toStdString();
    const Result found = run({"seek", line, "--damping", "flat", "--hook-up", "600 ohm", "--to", to});
    ASSERT_EQ(found.code, 0) << found.err;
    EXPECT_NE(found.out.find("600 ohm"), std::string::npos);
}

const std::string microphone = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";

std::string fileOf(const QTemporaryDir& folder, const char* name, const std::string& text) {
    const std::string path = folder.path().toStdString() + "/" + name;
    std::ofstream(path) << text;
    return path;
}

TEST(SeekVerb, SpinsASampleWithLowInductanceAgain) {
    QTemporaryDir folder;
    const std::string readings = fileOf(folder, "sample.csv", "figure,value\ninductance_10Hz.P,2.9 H\n");
    const std::string to = folder.path().toStdString();
    const Result found = run({"seek", microphone, "--respin", readings, "--keep", "1", "--to", to});
    ASSERT_EQ(found.code, 0) << found.err;
    EXPECT_NE(found.out.find("joint gap"), std::string::npos) << found.out;
    EXPECT_NE(found.out.find("these bring every promise back"), std::string::npos) << found.out;
    EXPECT_NE(found.out.find("winding sheet, step"), std::string::npos);
    EXPECT_NE(found.out.find("bill of materials"), std::string::npos);
    EXPECT_EQ(run({"figures", to + "/respin-1.coilwright"}).code, 0);
    EXPECT_EQ(run({"pair", microphone, to + "/respin-1.coilwright", "--to", to + "/pair"}).code, 0);
    const std::string differs = exchange::readFile(to + "/pair/differences.txt");
    EXPECT_NE(differs.find("turns"), std::string::npos) << differs;
}

TEST(SeekVerb, RefusesReadingsThatItCannotUse) {
    QTemporaryDir folder;
    const std::string readings = fileOf(folder, "sample.csv", "inductance_9Hz.P,3.3 H\n");
    expectRefused({"seek", microphone, "--respin", readings},
                  readings +
                      ": line 1: found \"inductance_9Hz.P\"; allowed is a figure that the design has, as "
                      "`coilwright figures` names it.");
    expectRefused({"seek", microphone, "--respin", ribbon},
                  ribbon +
                      ": found sheets of nickel-80-high; allowed is sheets of nickel-80, as in the design that was "
                      "wound.");
    expectRefused({"seek", microphone, "--respin", readings, "--hold", "core"},
                  "command line: --respin: found --hold beside it; allowed is --keep, --prices and --to beside it.");
}

}  // namespace seek_test
