// SPDX-License-Identifier: GPL-3.0-or-later
// The copies of catalog entries inside a design file: {"sheets": {KEY: {"digest": …, "entry": {…}}}, …}.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "json/value.h"
#include "units/fault.h"

namespace exchange {

/// Reads the copies; adds a fault for an entry that is not as its digest says.
[[nodiscard]] catalog::Catalog readParts(const json::Value& parts, const std::string& file,
                                         std::vector<units::Fault>& faults);
/// Writes them, kinds without an entry left out; an empty object if there are none.
[[nodiscard]] json::Value writeParts(const catalog::Catalog& parts);

}  // namespace exchange
