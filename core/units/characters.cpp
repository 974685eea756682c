// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/characters.h"

#include <utility>

namespace units {

namespace {

/// Bytes of a character that begins with `lead`; 0 if none does.
std::size_t bytesBehind(unsigned lead) {
    if (lead < 0x80) return 1;
    if (lead < 0xC2 || lead > 0xF4) return 0;
    return lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

/// The least and the greatest second byte: no overlong form, no surrogate, nothing beyond the last plane.
std::pair<unsigned, unsigned> secondByte(unsigned lead) {
    if (lead == 0xE0) return {0xA0, 0xBF};
    if (lead == 0xED) return {0x80, 0x9F};
    if (lead == 0xF0) return {0x90, 0xBF};
    if (lead == 0xF4) return {0x80, 0x8F};
    return {0x80, 0xBF};
}

}  // namespace

std::size_t characterBytes(std::string_view text) noexcept {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(text[i])); };
    if (text.empty()) return 0;
    const std::size_t length = bytesBehind(byte(0));
    if (text.size() < length) return 0;
    if (length < 2) return length;
    const auto [least, greatest] = secondByte(byte(0));
    if (byte(1) < least || byte(1) > greatest) return 0;
    for (std::size_t i = 2; i < length; ++i)
        if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
    return length;
}

std::string oneLine(std::string_view text) {
    constexpr unsigned char blank = 0x20, erase = 0x7F;
    std::string line;
    line.reserve(text.size());
    while (!text.empty()) {
        const std::size_t length = characterBytes(text);
        const auto first = static_cast<unsigned char>(text.front());
        if (length == 0)
            line += '?';
        else if (first < blank || first == erase)
            line += ' ';
        else
            line += text.substr(0, length);
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return line;
}

std::string oneLine(std::string_view text, std::size_t most) {
    if (text.size() <= most) return oneLine(text);
    std::size_t cut = most;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0) == 0x80) --cut;  // not inside a character
    return oneLine(text.substr(0, cut)) + "…";
}

}  // namespace units
