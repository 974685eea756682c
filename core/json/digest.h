// SPDX-License-Identifier: GPL-3.0-or-later
// A fingerprint of text.
#pragma once

#include <string>
#include <string_view>

namespace json {

/// SHA-256 of `text` as 64 hexadecimal digits (FIPS 180-4).
[[nodiscard]] std::string digest(std::string_view text);

}  // namespace json
