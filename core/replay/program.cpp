// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/program.h"

#include <algorithm>
#include <charconv>
#include <string_view>

#include "units/fault.h"
#include "units/joined.h"

namespace replay {

namespace {

constexpr std::size_t mostDigits = 9;

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// Reads one line.
class LineReader {
public:
    LineReader(std::string_view line, int number, const std::string& file)
        : line_(line), number_(number), file_(file) {}

    /// An empty block if the line says nothing to the machine.
    Block block() {
        Block block;
        block.line = number_;
        skip();
        if (at_ < line_.size() && line_[at_] == '/')
            refuse("an optional block", "a block that is always run: what a switch decides cannot be replayed");
        bool first = true;
        for (skip(); at_ < line_.size(); skip(), first = false) {
            if (line_[at_] == '(')
                comment(block);
            else
                word(block, first);
        }
        return block;
    }

private:
    [[noreturn]] void refuse(const std::string& found, const std::string& allowed) const {
        units::refuse(units::joined({file_, ": line ", std::to_string(number_)}), found, allowed);
    }
    void skip() {
        while (at_ < line_.size() && (line_[at_] == ' ' || line_[at_] == '\t')) ++at_;
    }
    void comment(Block& block) {
        const auto close = line_.find(')', at_);
        const auto open = line_.find('(', at_ + 1);
        if (close == std::string_view::npos) refuse("a bracket that does not close", "a comment that ends on its line");
        if (open < close) refuse("a bracket inside a bracket", "a comment without brackets inside");
        if (!block.comment.empty()) block.comment += ' ';
        block.comment += line_.substr(at_ + 1, close - at_ - 1);
        at_ = close + 1;
    }
    void word(Block& block, bool first) {
        const std::size_t begin = at_;
        const char letter = line_[at_++];
        const bool head = letter == ':';
        if (!(letter >= 'A' && letter <= 'Z') && !head)
            refuse(units::joined({"\"", line_.substr(begin, 1), "\""}),
                   "a letter from A to Z, or a comment in brackets");
        const std::size_t from = at_;
        if (at_ < line_.size() && (line_[at_] == '+' || line_[at_] == '-')) ++at_;
        std::size_t digits = 0, points = 0;
        for (; at_ < line_.size() && (isDigit(line_[at_]) || line_[at_] == '.'); ++at_)
            ++(line_[at_] == '.' ? points : digits);
        const std::string text(line_.substr(begin, at_ - begin));
        if (digits == 0 || points > 1) refuse('"' + text + '"', "a letter with a number behind it");
        if (digits > mostDigits) refuse('"' + text + '"', "a number of up to 9 digits");
        if ((head || letter == 'N') && !first) refuse('"' + text + '"', "a block number at the head of its block only");
        const bool repeats = letter != 'G' && letter != 'M';
        if (repeats &&
            std::any_of(block.words.begin(), block.words.end(), [&](const Word& w) { return w.letter == letter; }))
            refuse('"' + text + '"', units::joined({"the letter ", text.substr(0, 1), " once in a block"}));
        block.main = block.main || head;
        if (head || letter == 'N') return;
        block.words.push_back({letter, value(line_.substr(from, at_ - from)), points > 0, text});
    }
    static double value(std::string_view digits) {
        if (digits.front() == '+') digits.remove_prefix(1);
        double number = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), number);
        return number;
    }

    std::string_view line_;
    std::size_t at_ = 0;
    int number_;
    const std::string& file_;
};

/// The next line without its end; moves `from` behind it.
std::string_view nextLine(const std::string& text, std::size_t& from) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    std::string_view line(text.data() + from, end - from);
    if (line.ends_with('\r')) line.remove_suffix(1);
    from = end + 1;
    return line;
}

void checkLine(std::string_view line, int number, const std::string& file) {
    const std::string place = units::joined({file, ": line ", std::to_string(number)});
    if (number > static_cast<int>(mostLines))
        units::refuse(place, "one line more than 400000", "a program of up to 400000 lines");
    if (line.size() > longestLine)
        units::refuse(place, std::to_string(line.size()) + " signs", "a line of up to 400 signs");
    for (const char c : line)
        if (static_cast<unsigned char>(c) >= 0x7F || (static_cast<unsigned char>(c) < 0x20 && c != '\t'))
            units::refuse(place, "a sign outside ISO 646", "letters, digits and signs of ISO 646");
}

}  // namespace

Program readProgram(const std::string& text, const std::string& file) {
    Program program;
    program.file = file;
    std::size_t from = 0;
    bool begun = false;
    for (int number = 1; from < text.size(); ++number) {
        const std::string_view line = nextLine(text, from);
        checkLine(line, number, file);
        if (line.starts_with('%')) {
            if (begun) break;
            begun = true;
            program.name = line.substr(1);
            continue;
        }
        if (!begun && line.find_first_not_of(" \t") != std::string_view::npos)
            units::refuse(units::joined({file, ": line ", std::to_string(number)}),
                          units::joined({"\"", line.substr(0, 20), "\""}),
                          "% alone or with a name, the head of a program");
        Block block = LineReader(line, number, file).block();
        if (block.main || !block.words.empty()) program.blocks.push_back(std::move(block));
    }
    if (program.blocks.empty())
        units::refuse(file, "no block", "a program that begins with % and has at least one block");
    return program;
}

}  // namespace replay
