// SPDX-License-Identifier: GPL-3.0-or-later
// JSON text in and out: guarded reading, canonical writing.
#pragma once

#include <string>
#include <string_view>

#include "json/value.h"

namespace json {

inline constexpr std::size_t maximumBytes = 10'000'000;
inline constexpr int maximumDepth = 64;

/// Reads JSON text that came from outside. `file` names it in messages.
/// Throws units::BadInput: larger than 10 MB, not UTF-8, cut short or malformed (with line and column), nested deeper
/// than 64, a key twice in one object (with its place), a number that is not finite.
[[nodiscard]] Value read(std::string_view text, const std::string& file);

/// Canonical text: keys in the order they stand, two spaces of indent, one item a line, arrays of numbers that fit
/// in 100 columns on one line, shortest numbers that read back the same, LF, final newline. Numbers must be finite.
[[nodiscard]] std::string write(const Value& value);

}  // namespace json
