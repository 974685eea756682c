// SPDX-License-Identifier: GPL-3.0-or-later
// begin and ask from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "command_line.h"

namespace begin_test {

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

TEST(BeginVerb, RefusesAKindThatThereIsNot) {
    expectRefused({"begin", "choke", "a.coilwright"},
                  "command line: begin: found \"choke\"; allowed is one of direct-box, line-input, line-output, "
                  "microphone-input, splitter.");
    expectRefused({"begin", "splitter"}, "command line: found \"splitter\"; allowed is KIND F.coilwright.");
}

TEST(BeginVerb, ABlankDesignOpensAndTellsWhatIsStillToAsk) {
    QTemporaryDir folder;
    const std::string to = folder.path().toStdString() + "/first.coilwright";
    EXPECT_NE(run({"begin"}).out.find("line-output: Line output"), std::string::npos);
    const Result begun = run({"begin", "microphone-input", to});
    ASSERT_EQ(begun.code, 0) << begun.err;
    EXPECT_EQ(run({"figures", to}).code, 0);
    const Result asked = run({"ask", to, "--open"});
    ASSERT_EQ(asked.code, 0) << asked.err;
    EXPECT_NE(asked.out.find("climate: Between which temperatures"), std::string::npos) << asked.out;
    EXPECT_EQ(asked.out.find("source: "), std::string::npos) << "the blank's own source stands";
    const Result all = run({"ask", to});
    EXPECT_NE(all.out.find("source: What drives it, with which impedance?\n    150"), std::string::npos) << all.out;
}

}  // namespace begin_test
