// SPDX-License-Identifier: GPL-3.0-or-later
// The program run as from a command line.
#pragma once

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "commands/run.h"

namespace command_line {

struct Result {
    int code;
    std::string out, err;
};
inline Result run(const std::vector<std::string>& arguments) {
    std::ostringstream out, err;
    const int code = commands::run(arguments, out, err);
    return {code, out.str(), err.str()};
}
/// Exit status 2, the sentence alone on standard error, and nothing on standard output.
inline void expectRefused(const std::vector<std::string>& arguments, const std::string& sentence) {
    const Result result = run(arguments);
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(result.err, sentence + "\n");
}

}  // namespace command_line
