// SPDX-License-Identifier: GPL-3.0-or-later
// Brings a design file of an older format to today's.
#pragma once

#include <string>
#include <vector>

#include "json/value.h"

namespace exchange {

/// One step of the chain: makes a file of format `from` into one of format `from` + 1, and says so in `notes`.
struct MigrationStep {
    int from = 1;
    json::Value (*apply)(json::Value file, std::vector<std::string>& notes) = nullptr;
};

/// The steps from the first format to today's, in order. Format 1 is the first, so there is none before it.
[[nodiscard]] const std::vector<MigrationStep>& migrationSteps();

/// Applies the steps from format `from` on, one after another, up to format `to`; "coilwright" in the result is `to`.
/// A step that is missing in between is a fault of the program, not of the file.
[[nodiscard]] json::Value migrate(json::Value file, int from, int to, const std::vector<MigrationStep>& steps,
                                  std::vector<std::string>& notes);

}  // namespace exchange
