// SPDX-License-Identifier: GPL-3.0-or-later
// How much may stand in a file of records.
#pragma once

#include <string>

#include "json/value.h"

namespace json {

/// Values in a file of records, lists and objects counted too: a hundred times as many as in the longest of ours. A
/// record takes some hundred times the room of its shortest text, so that the size of a file alone is no limit.
inline constexpr std::size_t mostValues = 200'000;

/// Throws units::BadInput if there are more.
void limitAmount(const Value& root, const std::string& file);

}  // namespace json
