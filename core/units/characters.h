// SPDX-License-Identifier: GPL-3.0-or-later
// Text that came from outside, looked at character by character.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace units {

/// Bytes of the well-formed UTF-8 character at the front of `text` (Unicode 15, table 3-7), 0 if it is none.
[[nodiscard]] std::size_t characterBytes(std::string_view text) noexcept;

/// The text on one line: every control character is a blank, every byte that is not UTF-8 a question mark. What is put
/// into a sentence, a comment of a netlist or a line of a table, so that it cannot begin a line of its own.
[[nodiscard]] std::string oneLine(std::string_view text);

/// As `oneLine`, and no longer than `most` bytes: what is cut away leaves "…".
[[nodiscard]] std::string oneLine(std::string_view text, std::size_t most);

}  // namespace units
