// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright seek DESIGN --respin F: the smallest change that brings a sample's broken promises back.
#pragma once

#include <string>

#include "commands/arguments.h"
#include "commands/verb.h"

namespace commands {

/// F holds a sample's readings, or is a design with the sizes and factors that the sample has.
[[nodiscard]] std::string respinFound(const Arguments& arguments, const Opened& opened);

}  // namespace commands
