// SPDX-License-Identifier: GPL-3.0-or-later
// Papers, inside and outside, written by the command line.
#pragma once

#include <set>
#include <string>

#include "commands/arguments.h"
#include "commands/verb.h"
#include "papers/paper.h"

namespace commands {

/// "", "a4" or "letter". Throws units::BadInput for anything else.
[[nodiscard]] papers::Format formatOf(const std::string& name);
/// Options of papers, each with a value behind it: a file of each paper, and how and of what they are made.
[[nodiscard]] const std::set<std::string>& paperOptions();
/// Whether a paper was asked for. Throws units::BadInput for a file of another ending, and for what stands beside no
/// paper that it belongs to.
[[nodiscard]] bool asksForPapers(const Arguments& arguments);
/// Writes what was asked for; returns the names of the files, a line each. What is written follows from a file's
/// ending: .pdf the paper, .json its content, .csv its table.
[[nodiscard]] std::string writePapers(const Arguments& arguments, const Opened& opened, papers::Format format);

}  // namespace commands
