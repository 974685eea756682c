// SPDX-License-Identifier: GPL-3.0-or-later
// Whether text is JSON (RFC 8259), and if not, where and why.
#pragma once

#include <string>
#include <string_view>

namespace json {

/// Throws units::BadInput with the line and column of the first fault. `text` has passed `guard`, so its depth is
/// bounded.
void checkSyntax(std::string_view text, const std::string& file);

}  // namespace json
