// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/guard.h"

#include <algorithm>

#include "json/text.h"
#include "units/fault.h"

namespace json {

namespace {

constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

std::size_t badByte(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t length = characterBytes(text.substr(at));
        if (length == 0) return at;
        at += length;
    }
    return std::string_view::npos;
}

/// The bracket that opens one level too many, or npos.
std::size_t tooDeep(std::string_view text) {
    int depth = 0;
    bool inString = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (inString) {
            if (c == '\\')
                ++at;
            else if (c == '"')
                inString = false;
        } else if (c == '"') {
            inString = true;
        } else if (c == '{' || c == '[') {
            if (++depth > maximumDepth) return at;
        } else if (c == '}' || c == ']') {
            --depth;
        }
    }
    return std::string_view::npos;
}

std::string byteWords(char c) {
    constexpr std::string_view hexadecimal = "0123456789ABCDEF";
    const auto byte = static_cast<unsigned char>(c);
    return std::string("the byte 0x") + hexadecimal[byte >> 4] + hexadecimal[byte & 0xF];
}

}  // namespace

std::string lineAndColumn(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, std::min(at, text.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    const auto column = std::count_if(before.begin() + static_cast<std::ptrdiff_t>(start), before.end(),
                                      [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }) +
                        1;
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

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

void guard(std::string_view text, const std::string& file) {
    using units::BadInput;
    using units::Fault;
    if (text.size() > maximumBytes)
        throw BadInput(Fault{file, std::to_string(text.size()) + " bytes", "a file of at most 10 MB"});
    if (text.starts_with(byteOrderMark))
        throw BadInput(Fault{file, "a byte order mark at the start", "UTF-8 text without one"});
    if (const std::size_t at = badByte(text); at != std::string_view::npos)
        throw BadInput(Fault{file + ": " + lineAndColumn(text, at), byteWords(text[at]), "UTF-8 text"});
    if (const std::size_t at = tooDeep(text); at != std::string_view::npos)
        throw BadInput(Fault{file + ": " + lineAndColumn(text, at), "lists and objects nested deeper than 64",
                             "at most 64 levels"});
}

}  // namespace json
