// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks of ISO 6983-1 as text: words in the standard's order, numbers in the machine's format.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/winder.h"

namespace exchange {

/// Letters, digits and signs that a comment may carry: no brackets, %, : or anything outside ISO 646; upper case.
[[nodiscard]] std::string commentText(std::string_view text);

/// One block on the way to its line.
class BlockWords {
public:
    explicit BlockWords(const Winder& winder) : winder_(winder) {}
    BlockWords& preparatory(int code) { return add('G', twoDigits(code)); }
    BlockWords& auxiliary(int code) { return add('M', twoDigits(code)); }
    BlockWords& whole(const std::string& letter, long long number) {
        return add(letter.front(), std::to_string(number));
    }
    /// A length in m on an axis; the program's unit and number format are the machine's.
    BlockWords& length(const std::string& letter, double metres, int decimals);
    BlockWords& number(const std::string& letter, double value, int decimals);
    BlockWords& message(std::string text) {
        message_ = std::move(text);
        return *this;
    }
    /// "G33 X1.2 C30.5 K0.1 S120 M03 (MSG …)".
    [[nodiscard]] std::string text() const;

private:
    struct Word {
        char letter;
        std::string digits;
    };
    static std::string twoDigits(int code);
    BlockWords& add(char letter, std::string digits) {
        words_.push_back({letter, std::move(digits)});
        return *this;
    }
    const Winder& winder_;
    std::vector<Word> words_;
    std::string message_;
};

/// A length in the program's unit.
[[nodiscard]] double inProgramUnit(double metres, const Winder& winder) noexcept;

}  // namespace exchange
