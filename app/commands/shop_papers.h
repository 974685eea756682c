// SPDX-License-Identifier: GPL-3.0-or-later
// The papers for the shop: winding sheet, traveller, bill of materials, test plan.
#pragma once

#include <set>
#include <string>

#include "commands/arguments.h"
#include "commands/verb.h"
#include "papers/paper.h"

namespace commands {

/// "", "a4" or "letter". Throws units::BadInput for anything else.
[[nodiscard]] papers::Format formatOf(const std::string& name);
/// Their options, each with a file behind it.
[[nodiscard]] const std::set<std::string>& shopPaperOptions();
/// Whether any of them was typed.
[[nodiscard]] bool asksForShopPapers(const Arguments& arguments);
/// Writes what was asked for; returns the names of the files, a line each. What is written follows from a file's
/// ending: .pdf the paper, .json its content. Throws units::BadInput for another ending.
[[nodiscard]] std::string writeShopPapers(const Arguments& arguments, const Opened& opened, papers::Format format);

}  // namespace commands
