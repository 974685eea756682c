// SPDX-License-Identifier: GPL-3.0-or-later
// Winding programs at the command line: written, replayed, compared; exit status 0, 1 and 2.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>

#include "command_line.h"
#include "exchange/read_file.h"

namespace winding_test {

const std::string demo = COILWRIGHT_SOURCE_DIR "/demo-projects/direct-box/direct-box.coilwright";
const std::string other = COILWRIGHT_SOURCE_DIR "/demo-projects/line-unit/line-unit.coilwright";

using command_line::Result;
using command_line::run;
bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

class WindingCommands : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string in(const std::string& name) { return folder.filePath(QString::fromStdString(name)).toStdString(); }
    std::string written(const std::string& winder) {
        const Result result = run({"write", demo, "--program", in("p.iso"), "--winder", winder});
        EXPECT_EQ(result.code, 0) << result.err;
        EXPECT_EQ(result.out, in("p.iso") + "\n");
        return in("p.iso");
    }
    static void save(const std::string& path, const std::string& text) {
        std::ofstream(path, std::ios::binary) << text;
    }
};

TEST_F(WindingCommands, WhatWasWrittenIsTheSame) {
    for (const char* winder : {"hand-guided", "single-traverse", "six-spindle"}) {
        const Result same = run({"replay", written(winder), "--winder", winder, "--against", demo});
        EXPECT_EQ(same.code, 0) << same.out;
        EXPECT_EQ(same.err, "");
        const bool hand = std::string(winder) == "hand-guided";
        EXPECT_TRUE(has(same.out, "winds " + demo +
                                      (hand ? " in turns, sense and stops; side, pitch and place of each turn are the "
                                              "winder's hand\n"
                                            : " as it is laid out\n")))
            << same.out;
        EXPECT_TRUE(has(same.out, "CAUTION, dry run first"));
        EXPECT_TRUE(has(same.out, " units a day of "));
        EXPECT_EQ(run({"replay", in("p.iso"), "--winder", winder}).code, 0);
    }
}

TEST_F(WindingCommands, AnotherDesignDiffersInWords) {
    const Result differs = run({"replay", written("six-spindle"), "--winder", "six-spindle", "--against", other});
    EXPECT_EQ(differs.code, 1);
    EXPECT_EQ(differs.err, "");
    EXPECT_TRUE(has(differs.out, "step 1.1, A.a: 2700 turns, the design has 340.\n")) << differs.out;
}

TEST_F(WindingCommands, AProgramEditedByHandDiffersInWords) {
    std::string text = exchange::readFile(written("single-traverse"));
    const std::string count = " C212.00 ";
    const auto at = text.find(count);
    ASSERT_NE(at, std::string::npos) << text.substr(0, 2000);
    text.replace(at, count.size(), " C211.00 ");
    save(in("edited.iso"), text);
    const Result differs = run({"replay", in("edited.iso"), "--winder", "single-traverse", "--against", demo});
    EXPECT_EQ(differs.code, 1);
    EXPECT_TRUE(has(differs.out, "P.a: 2699 turns, the design has 2700.\n")) << differs.out;
}

TEST_F(WindingCommands, AStepTableStandsBesideTheProgramOrAlone) {
    const Result result = run({"write", demo, "--step-table", in("t.csv"), "--winder",
                               COILWRIGHT_SOURCE_DIR "/resources/winders/hand-guided.json"});
    EXPECT_EQ(result.code, 0) << result.err;
    EXPECT_TRUE(has(exchange::readFile(in("t.csv")), "\nstep,section,layer,turns,width_mm,"));
}

TEST_F(WindingCommands, WindersAreListedAndChecked) {
    const Result all = run({"winders"});
    EXPECT_EQ(all.code, 0) << all.err;
    EXPECT_TRUE(has(all.out, "single-traverse: Single-spindle traverse winder, ")) << all.out;
    save(in("mine.json"), exchange::readFile(COILWRIGHT_SOURCE_DIR "/resources/winders/six-spindle.json"));
    EXPECT_EQ(run({"winders", in("mine.json")}).out,
              in("mine.json") + ": Six-spindle automatic with pin wrap, " + in("mine.json") + "\n");
    save(in("mine.json"), "{\"format\": 1}");
    EXPECT_EQ(run({"winders", in("mine.json")}).code, 2);
}

TEST_F(WindingCommands, BadInputIsRefusedWithOneSentence) {
    const auto refused = [](const std::vector<std::string>& typed, const std::string& sentence) {
        const Result result = run(typed);
        EXPECT_EQ(result.code, 2);
        EXPECT_EQ(result.err, sentence + "\n");
        EXPECT_EQ(result.out, "");
    };
    refused({"write", demo, "--program", in("p"), "--winder", "fast"},
            "command line: --winder: found \"fast\"; allowed is hand-guided, single-traverse, six-spindle, or the path "
            "of a .json file.");
    refused(
        {"write", demo, "--program", in("p")},
        "command line: --winder: found nothing; allowed is hand-guided, single-traverse, six-spindle, or the path of "
        "a .json file.");
    refused(
        {"write", demo, "--winder", "six-spindle"},
        "command line: write: found nothing to write; allowed is --datasheet F.pdf, --quotation F.pdf, "
        "--netlist F.cir, --touchstone F.sNp, --winding-sheet F.pdf, --traveller F.pdf, --bill F.csv, "
        "--test-plan F.pdf, --limits F.csv, --first-article F.pdf, --deviation-permit F.pdf, --return-report F.pdf, "
        "--change-notice F.pdf, --customer-notice F.pdf, --program F or --step-table F.csv.");
    refused({"write", demo, "--program", in("p"), "--winder", "six-spindle", "--leg", "2"},
            "command line: --leg: found \"2\"; allowed is 1, the leg that is wound.");
    refused({"replay", in("none.iso"), "--winder", "six-spindle"},
            in("none.iso") + ": found no such file; allowed is a readable file of at most 10 MB.");
    save(in("bad.iso"), "%\nN10 X\n");
    refused({"replay", in("bad.iso"), "--winder", "six-spindle"},
            in("bad.iso") + ": line 2: found \"X\"; allowed is a letter with a number behind it.");
    save(in("bad.json"), "{}");
    refused({"replay", in("bad.iso"), "--winder", in("bad.json")},
            in("bad.json") + ": /format: found nothing; allowed is a whole number from 1 to 1.");
}

}  // namespace winding_test
