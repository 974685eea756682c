// SPDX-License-Identifier: GPL-3.0-or-later
// spread and gather from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>

#include "command_line.h"
#include "exchange/read_file.h"
#include "json/text.h"

namespace spread_test {

const std::string design = COILWRIGHT_SOURCE_DIR "/demo-projects/ribbon-step-up/ribbon-step-up.coilwright";

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

class SpreadTest : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string in(const std::string& name) { return folder.filePath(QString::fromStdString(name)).toStdString(); }
};

TEST_F(SpreadTest, PartsGatheredAreTheRunBitForBit) {
    const std::vector<std::string> head{"spread", design, "--units", "24", "--seed", "5", "--lot", "6"};
    auto whole = head;
    whole.push_back("--json");
    const Result once = run(whole);
    ASSERT_EQ(once.code, 0) << once.err;
    std::vector<std::string> gather{"gather"};
    for (const char* part : {"3/4", "1/4", "4/4", "2/4"}) {
        auto one = head;
        const std::string file = in(std::string("part") + part[0]);
        one.insert(one.end(), {"--part", part, "--to", file});
        ASSERT_EQ(run(one).out, file + "\n");
        gather.push_back(file);
    }
    const Result all = run(gather);
    EXPECT_EQ(all.code, 0) << all.err;
    EXPECT_EQ(all.out, once.out);
    EXPECT_EQ(all.out.find(folder.path().toStdString()), std::string::npos);
    const json::Value said = json::read(all.out, "gather");
    EXPECT_EQ(said["units"], 24);
    EXPECT_EQ(said["seed"], 5);
    EXPECT_EQ(said["columns"].size(), 7U);  // six promises and a mask
    for (const json::Value& column : said["columns"]) EXPECT_EQ(column["yield"]["judged"], 24) << column["name"];
    gather.pop_back();
    EXPECT_EQ(run(gather).code, 2);
}

TEST_F(SpreadTest, TextNamesPromisesYieldAndCause) {
    const Result said = run({"spread", design, "--units", "200"});
    ASSERT_EQ(said.code, 0) << said.err;
    for (const char* words : {"200 units in lots of 20, seed 1", "low_3dB: at most 25.0 Hz", "kept (95 % interval",
                              "variance by", "all promises together"})
        EXPECT_NE(said.out.find(words), std::string::npos) << words << '\n' << said.out;
    const Result slopes = run({"spread", design, "--sensitivity"});
    ASSERT_EQ(slopes.code, 0) << slopes.err;
    EXPECT_NE(slopes.out.find("dcr.P"), std::string::npos);
}

TEST_F(SpreadTest, BadInputIsOneSentence) {
    expectRefused({"spread", design, "--units", "100", "--part", "5/4", "--to", in("x")},
                  "command line: --part: found \"5/4\"; allowed is K/M: part K of M, K from 1 to M, M up to the 100 "
                  "units.");
    expectRefused({"spread", design, "--part", "1/4"},
                  "command line: --part: found no file to write it to; allowed is --to F beside it.");
    expectRefused({"spread", design, "--units", "-3"},
                  "command line: --units: found \"-3\"; allowed is a whole number from 1 to 10000000.");
    expectRefused({"spread", design, "--seed", "x"},
                  "command line: --seed: found \"x\"; allowed is a whole number from 0 to 9007199254740992.");
    expectRefused({"spread", design, "--figures", "dcr.Q"},
                  "figure: found \"dcr.Q\"; allowed is a figure of this design, as `figures` names them.");
    expectRefused({"gather"}, "command line: found no file; allowed is files that spread --to wrote.");
    expectRefused({"gather", design}, design +
                                          ": /coilwright_spread: found nothing; allowed is 1: a part of a spread, as "
                                          "`spread --to` writes it.");
}

}  // namespace spread_test
