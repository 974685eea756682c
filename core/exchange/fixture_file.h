// SPDX-License-Identifier: GPL-3.0-or-later
// The file that describes a test fixture.
#pragma once

#include <string>
#include <vector>

#include "design/fixture.h"

namespace exchange {

/// Reads and checks a description. Throws units::BadInput with every fault: unknown keys, ranges that cross, days that
/// are none, no instrument with a calibration.
[[nodiscard]] design::Fixture readFixture(const std::string& text, const std::string& file);
/// Its canonical text.
[[nodiscard]] std::string writeFixture(const design::Fixture& fixture);

/// The shop's own `fixtures/bench.json` in the last of the folders that has it: the file to read where none is named.
/// Throws units::BadInput if there is none.
[[nodiscard]] std::string fixtureFile(const std::vector<std::string>& folders);

}  // namespace exchange
