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

}  // namespace seek_test
