// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/arguments.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>

namespace arguments_test {

using commands::Arguments;

Arguments traceArguments(const std::vector<std::string>& typed) {
    commands::Grammar grammar{{"DESIGN"}, {"--pictures"}, {"--hook-up"}};
    commands::allowGrid(grammar);
    return commands::sorted(typed, grammar);
}

std::string refusal(const std::vector<std::string>& typed) {
    try {
        const Arguments arguments = traceArguments(typed);
        (void)commands::folderOf(arguments);
        (void)commands::gridOf(arguments);
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "taken";
}

TEST(Arguments, ToIsAFolderAndANumberIsTheUpperFrequency) {
    const Arguments both =
        traceArguments({"a.coilwright", "--to", "out", "--from", "20", "--to", "20k", "--points", "31"});
    EXPECT_EQ(commands::folderOf(both), "out");
    const std::vector<double> grid = commands::gridOf(both);
    ASSERT_EQ(grid.size(), 31U);
    EXPECT_DOUBLE_EQ(grid.front(), 20);
    EXPECT_DOUBLE_EQ(grid.back(), 20000);
    EXPECT_TRUE(commands::gridOf(traceArguments({"a", "--to", "out"})).empty());
    EXPECT_EQ(commands::folderOf(traceArguments({"a", "--to", "./2026"})), "./2026");
}

TEST(Arguments, EachFaultHasItsSentence) {
    const std::vector<std::pair<std::vector<std::string>, std::string>> cases{
        {{}, "command line: found no DESIGN; allowed is DESIGN."},
        {{"a", "b", "--to", "out"}, "command line: found \"a\" \"b\"; allowed is DESIGN."},
        {{"a"},
         "command line: --to: found no folder; allowed is the folder to write into (./NAME if its name is a number)."},
        {{"a", "--to", "20k"},
         "command line: --to: found no folder; allowed is the folder to write into (./NAME if its name is a number)."},
        {{"a", "--to", "x", "--to", "y"},
         "command line: --to: found two folders; allowed is one folder and at most one frequency."},
        {{"a", "--to", "1", "--to", "2", "--to", "y"}, "command line: --to: found it more than once; allowed is once."},
        {{"a", "--to"}, "command line: --to: found nothing after it; allowed is a value."},
        {{"a", "--to", "out", "--from", "0"},
         "command line: --from: found \"0\"; allowed is a frequency above 0 Hz and up to 1 GHz."},
        {{"a", "--to", "out", "--from", "-20"},
         "command line: --from: found \"-20\"; allowed is a frequency above 0 Hz and up to 1 GHz."},
        {{"a", "--to", "out", "--from", "nan"},
         "command line: --from: found \"nan\"; allowed is a frequency above 0 Hz and up to 1 GHz."},
        {{"a", "--to", "out", "--to", "0"},
         "command line: --to: found \"0\"; allowed is a frequency above 0 Hz and up to 1 GHz."},
        {{"a", "--to", "out", "--from", "2000", "--to", "20"},
         "command line: --from: found \"2000\"; allowed is a frequency below that of --to."},
        {{"a", "--to", "out", "--points", "1"},
         "command line: --points: found \"1\"; allowed is a whole number from 2 to 100000."},
        {{"a", "--to", "out", "--points", "2.5"},
         "command line: --points: found \"2.5\"; allowed is a whole number from 2 to 100000."},
        {{"a", "--to", "out", "--at", "f", "--points", "9"},
         "command line: --at: found --from, --to or --points beside it; allowed is either a file of frequencies or a "
         "range."},
        {{"a", "--to", "out", "--speed", "9"},
         "command line: found \"--speed\"; allowed is --at, --from, --hook-up, --pictures, --points, --to."},
    };
    for (const auto& [typed, sentence] : cases) EXPECT_EQ(refusal(typed), sentence);
}

class FrequencyFile : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string path = folder.filePath("at.txt").toStdString();
    std::string refusalOf(const std::string& text) {
        std::ofstream(path) << text;
        return refusal({"a", "--to", "out", "--at", path});
    }
};

TEST_F(FrequencyFile, OneFrequencyALineIsTakenAsItStands) {
    std::ofstream(path) << "20\r\n1000\n\n 61e3 \n";
    EXPECT_EQ(commands::gridOf(traceArguments({"a", "--to", "out", "--at", path})),
              (std::vector<double>{20, 1000, 61000}));
}

TEST_F(FrequencyFile, EachFaultNamesItsLine) {
    EXPECT_EQ(refusalOf("20\n0\n"), path + ": line 2: found \"0\"; allowed is a frequency above 0 Hz and up to 1 GHz.");
    EXPECT_EQ(refusalOf("20\n10\n"),
              path + ": line 2: found \"10\"; allowed is a frequency above that of the line before.");
    EXPECT_EQ(refusalOf("many\n"),
              path + ": line 1: found \"many\"; allowed is a frequency above 0 Hz and up to 1 GHz.");
    EXPECT_EQ(refusalOf("\n\n"), path + ": found no frequency; allowed is one frequency in Hz a line.");
}

}  // namespace arguments_test
