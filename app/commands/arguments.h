// SPDX-License-Identifier: GPL-3.0-or-later
// What was typed after a verb.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "analysis/answer.h"

namespace commands {

/// What a verb takes.
struct Grammar {
    std::vector<std::string> operands;  ///< their names for messages, all needed: "DESIGN"
    std::set<std::string> flags;        ///< "--json"
    std::set<std::string> options;      ///< with a value: "--hook-up"
};

/// Sorted. Values keep the order they were typed in; only `--to` may come twice.
struct Arguments {
    std::vector<std::string> operands;
    std::set<std::string> flags;
    std::map<std::string, std::vector<std::string>> options;
    [[nodiscard]] std::string option(const std::string& name) const;  ///< "" if not given
};

/// Throws units::BadInput, place "command line", for anything the grammar does not allow.
[[nodiscard]] Arguments sorted(const std::vector<std::string>& typed, const Grammar& grammar);

/// Adds the options that choose frequencies: --from HZ --to HZ --points N, or --at FILE.
void allowGrid(Grammar& grammar);
/// The frequencies asked for; empty: the usual grid. Throws units::BadInput.
[[nodiscard]] std::vector<double> gridOf(const Arguments& arguments);
/// The folder after `--to`: the value that is no number. Throws units::BadInput if there is none.
[[nodiscard]] std::string folderOf(const Arguments& arguments);

/// `name` if the design has that hook-up or it is empty. Throws units::BadInput naming those there are.
[[nodiscard]] std::string knownHookUp(const design::Design& design, const std::string& name);

/// Throws units::BadInput whose place is the command line's `option`.
[[noreturn]] void refuse(const std::string& option, const std::string& found, const std::string& allowed);

}  // namespace commands
