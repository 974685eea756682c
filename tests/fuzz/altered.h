// SPDX-License-Identifier: GPL-3.0-or-later
// Bytes that stand for alterations of a sound JSON file, so that a fuzzer comes past the syntax.
#pragma once

#include <string>
#include <string_view>

namespace fuzz {

/// The text that `bytes` stand for: themselves, or, if they begin with 0xFF (which no UTF-8 has), the sound file at
/// `path` under the source folder with one alteration for every four bytes behind it: two say which value, one what is
/// done with it (taken away, replaced, doubled in its list, exchanged), one with what.
[[nodiscard]] std::string givenText(std::string_view bytes, const std::string& path);

}  // namespace fuzz
