// SPDX-License-Identifier: GPL-3.0-or-later
// How people spell prefixes and units of each kind.
#pragma once

#include <optional>
#include <string_view>

#include "units/kind.h"

namespace units {

/// What a term of an expression is.
enum class Sort {
    Bare,    ///< a number without unit
    Amount,  ///< a number with a unit, SI
    Level,   ///< a level in dBu
    Gain     ///< a difference of levels, dB
};

/// A prefix and unit that stand behind a number: value × factor × 10^exponent + offset.
struct Suffix {
    int exponent = 0;
    long double factor = 1;
    long double offset = 0;
    Sort sort = Sort::Amount;
    int power = 1;           ///< 2 for an area where lengths have 1
    std::size_t length = 0;  ///< bytes that it takes
};

/// The suffix of `kind` with which `text` begins, the longest one; nothing if there is none.
[[nodiscard]] std::optional<Suffix> suffix(Kind kind, std::string_view text);

/// A letter that stands in the place of the decimal sign, as in "4k7" and "4R7", with its power of ten in `exponent`.
[[nodiscard]] std::optional<Suffix> decimalLetter(Kind kind, std::string_view text);

/// "a length", "a number of turns".
[[nodiscard]] std::string_view noun(Kind kind) noexcept;
/// Units that may be typed, in words: "m, cm, mm, um, in, mil or AWG"; "" if there is none.
[[nodiscard]] std::string_view unitWords(Kind kind) noexcept;
/// What one may type, in quotes: "\"0.1 mm\", \"1/2 in\" or \"38 AWG\"".
[[nodiscard]] std::string_view example(Kind kind) noexcept;
/// A bare number of `kind` is in 10^shopExponent SI units.
[[nodiscard]] int shopExponent(Kind kind) noexcept;
/// True if a bare number may be added to one with a unit, since no other unit than the SI one is in use.
[[nodiscard]] bool bareIsPlain(Kind kind) noexcept;

/// Bytes of the UTF-8 character at the front of `text`; 1 if it is none.
[[nodiscard]] std::size_t characterLength(std::string_view text) noexcept;
[[nodiscard]] constexpr bool isDigit(char c) noexcept {
    return c >= '0' && c <= '9';
}
[[nodiscard]] constexpr bool isLetter(char c) noexcept {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace units
