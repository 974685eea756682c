// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/characters.h"

namespace units {

std::size_t characterBytes(std::string_view text) noexcept {
    const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
    const auto within = [&](std::size_t i, unsigned low, unsigned high) { return byte(i) >= low && byte(i) <= high; };
    const unsigned lead = byte(0);
    if (text.empty()) return 0;
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return within(1, 0x80, 0xBF) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned low = lead == 0xE0 ? 0xA0 : 0x80, high = lead == 0xED ? 0x9F : 0xBF;
        return within(1, low, high) && within(2, 0x80, 0xBF) ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned low = lead == 0xF0 ? 0x90 : 0x80, high = lead == 0xF4 ? 0x8F : 0xBF;
        return within(1, low, high) && within(2, 0x80, 0xBF) && within(3, 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
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
