// SPDX-License-Identifier: GPL-3.0-or-later
// A program of ISO 6983-1 blocks, read word by word.
#pragma once

#include <string>
#include <vector>

namespace replay {

/// A letter and its number as it stands: "Z45.250", "M03".
struct Word {
    char letter = 0;
    double value = 0;    ///< of the digits as they stand
    bool point = false;  ///< they have a decimal sign
    std::string text;    ///< with the letter
};

/// A line that says something to the machine.
struct Block {
    int line = 1;
    bool main = false;  ///< headed by ":" instead of N: the machine may be restarted here
    std::vector<Word> words;
    std::string comment;  ///< what stands in brackets
};

struct Program {
    std::string file;
    std::string name;  ///< behind %
    std::vector<Block> blocks;
};

inline constexpr std::size_t mostLines = 400000, longestLine = 400;

/// Reads text that came from outside. Throws units::BadInput with the line at the first thing that is no program:
/// no % at its head, a sign outside ISO 646, an open or nested bracket, a letter without a number or a number without
/// a letter, a number cut short or with more than 9 digits, a letter twice in a block (other than G and M), an optional
/// block ("/"), a line of more than 400 signs or more than 400,000 lines. Block numbers need not rise. Text behind the
/// closing % is not looked at.
[[nodiscard]] Program readProgram(const std::string& text, const std::string& file);

}  // namespace replay
