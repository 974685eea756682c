// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/guard.h"

#include <algorithm>

#include "json/text.h"
#include "units/characters.h"
#include "units/fault.h"

namespace json {

namespace {

constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

std::size_t badByte(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t length = units::characterBytes(text.substr(at));
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

void guard(std::string_view text, const std::string& file) {
    using units::refuse;
    if (text.size() > maximumBytes) refuse(file, std::to_string(text.size()) + " bytes", "a file of at most 10 MB");
    if (text.starts_with(byteOrderMark)) refuse(file, "a byte order mark at the start", "UTF-8 text without one");
    if (const std::size_t at = badByte(text); at != std::string_view::npos)
        refuse(file + ": " + lineAndColumn(text, at), byteWords(text[at]), "UTF-8 text");
    if (const std::size_t at = tooDeep(text); at != std::string_view::npos)
        refuse(file + ": " + lineAndColumn(text, at), "lists and objects nested deeper than 64", "at most 64 levels");
}

}  // namespace json
