// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/block_writer.h"

#include <algorithm>
#include <cmath>

#include "units/decimal.h"
#include "units/inch.h"

namespace exchange {

namespace {

/// Place of an address in a block: preparatory function, dimensions, interpolation parameters, feed, spindle speed,
/// tool and unassigned ones, auxiliary function.
std::size_t rank(char letter) {
    constexpr std::string_view order = "GXYZUVWPQRABCIJKFEDHLSTM";
    return order.find(letter);
}

char commentSign(char c) {
    if (c >= 'a' && c <= 'z') return static_cast<char>(c - 'a' + 'A');
    if (c == '(') return '<';
    if (c == ')') return '>';
    return c == '%' || c == ':' || c < 0x20 || c == 0x7F ? ' ' : c;
}

}  // namespace

double inProgramUnit(double metres, const Winder& winder) noexcept {
    const double millimetres = metres * 1e3;
    return winder.unit == ProgramUnit::Inch ? millimetres / units::millimetresPerInch : millimetres;
}

std::string commentText(std::string_view text) {
    std::string plain;
    plain.reserve(text.size());
    for (std::size_t k = 0; k < text.size(); ++k) {
        const auto byte = static_cast<unsigned char>(text[k]);
        if (byte < 0x80) {
            plain += commentSign(text[k]);
            continue;
        }
        // One sign a character: u for micro, as in files, else a question mark.
        const std::string_view two = text.substr(k, 2);
        plain += two == "\u00b5" || two == "\u03bc" ? 'U' : '?';
        while (k + 1 < text.size() && (static_cast<unsigned char>(text[k + 1]) & 0xC0) == 0x80) ++k;
    }
    return plain;
}

std::string BlockWords::twoDigits(int code) {
    return code < 10 ? "0" + std::to_string(code) : std::to_string(code);
}

BlockWords& BlockWords::number(const std::string& letter, double value, int decimals) {
    if (winder_.decimalPoint) return add(letter.front(), units::fixedDecimals(value, decimals));
    return add(letter.front(), std::to_string(std::llround(value * std::pow(10.0, decimals))));
}

BlockWords& BlockWords::length(const std::string& letter, double metres, int decimals) {
    return number(letter, inProgramUnit(metres, winder_), decimals);
}

std::string BlockWords::text() const {
    std::vector<Word> sorted = words_;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Word& a, const Word& b) { return rank(a.letter) < rank(b.letter); });
    std::string line;
    for (const Word& word : sorted) {
        if (!line.empty()) line += ' ';
        line += word.letter;
        line += word.digits;
    }
    if (!message_.empty()) line.append(line.empty() ? "(" : " (").append(message_).append(")");
    return line;
}

}  // namespace exchange
