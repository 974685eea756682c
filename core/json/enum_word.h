// SPDX-License-Identifier: GPL-3.0-or-later
// The word that files have for a value of an enum.
#pragma once

namespace json {

/// By the enum's `names` (see record.h); "" for a value that has none.
template <class Enum>
[[nodiscard]] constexpr const char* wordOf(Enum value) noexcept {
    for (const auto& [word, known] : names(Enum{}))
        if (known == value) return word;
    return "";
}

}  // namespace json
