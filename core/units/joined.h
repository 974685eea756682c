// SPDX-License-Identifier: GPL-3.0-or-later
// Text put together from pieces.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace units {

/// The pieces one behind the other, in one allocation.
[[nodiscard]] inline std::string joined(std::initializer_list<std::string_view> pieces) {
    std::size_t size = 0;
    for (const auto piece : pieces) size += piece.size();
    std::string text;
    text.reserve(size);
    for (const auto piece : pieces) text += piece;
    return text;
}

}  // namespace units
