// SPDX-License-Identifier: GPL-3.0-or-later
// The command line as a function.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace commands {

/// Whether these arguments (without the program's name) are for the command line, not for the window.
[[nodiscard]] bool isCommand(const std::vector<std::string>& arguments);
/// Whether the command needs a painter (an application object) before it runs.
[[nodiscard]] bool needsApplication(const std::vector<std::string>& arguments);

/// Every verb, as a sentence lists them: "figures, traces and write".
[[nodiscard]] std::string verbNames();

/// Runs a verb, `--help` or `--version`. Returns 0 with the result on `out`; or 2 with one sentence on `err` and
/// nothing on `out`.
int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err);

}  // namespace commands
