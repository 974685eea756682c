// SPDX-License-Identifier: GPL-3.0-or-later
// What is looked at in JSON text before it is parsed.
#pragma once

#include <string>
#include <string_view>

namespace json {

/// "line 3, column 5" of a byte of `text`; columns count characters, both from 1.
[[nodiscard]] std::string lineAndColumn(std::string_view text, std::size_t at);

/// Throws units::BadInput if `text` is too large, starts with a byte order mark, is not UTF-8, or nests too deep.
void guard(std::string_view text, const std::string& file);

}  // namespace json
