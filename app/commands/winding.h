// SPDX-License-Identifier: GPL-3.0-or-later
// What the verbs that write and replay winding programs have in common.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace commands {

/// A winder's description as text.
struct WinderText {
    std::string file, text;
};
/// Behind `--winder NAME` or a path; a shop's own folder rules. Throws units::BadInput, also for a description with
/// faults.
[[nodiscard]] WinderText winderText(const std::string& nameOrPath);

/// The leg to wind, from 1: what `--leg` says, else `usual` if it is wound, else the only one that is. Throws
/// units::BadInput where both are wound and nothing says which.
[[nodiscard]] int legOf(const design::Design& design, const std::string& option, const std::string& usual);

/// Writes the program and the step table of a coil into the files that are named; returns their names, a line each.
[[nodiscard]] std::string writeWinding(const design::Design& design, const catalog::Catalog& shop,
                                       const std::string& program, const std::string& table, const std::string& winder,
                                       const std::string& leg);

}  // namespace commands
