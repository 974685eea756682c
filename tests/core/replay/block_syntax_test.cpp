// SPDX-License-Identifier: GPL-3.0-or-later
// Programs keep the block syntax of ISO 6983-1. The grammar below is written from the standard's rules, and shares
// nothing with writer or reader.
// Sources: a program begins with % and the line with % bears no number, numbering begins with the block after it, text
// in round brackets is not for the machine and holds no % and no ":", ":" heads a main block (course text "Coding and
// recording of control programs", topic 5, Sumy State University, on the ISO 7-bit code; an excerpt was seen). A block
// begins with a number or ":" and has a line of its own; a letter stands once in it other than G and M (lecture notes
// "Structure of a block" at um.co.ua; an excerpt was seen). A word is a letter and a number with an optional sign and
// decimal point; the order of words N, G, dimensions, interpolation parameters, feed, spindle speed, tool, auxiliary
// function; M02 or M30 at the end: ISO 6983-1, from memory.
#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <sstream>

#include "random_designs.h"

namespace block_syntax_test {

using namespace winding_cases;

/// "" for a program that keeps the rules, else the rule and the line that breaks it.
std::string broken(const std::string& text) {
    static const std::regex start("%[0-9A-Z]*"), comment(R"(\([ -$&'*-9;-~]*\))"),
        block(R"(([N:])([0-9]{1,8})((?: [A-MO-Z][+-]?[0-9]+(?:\.[0-9]+)?)+)((?: \([ -$&'*-9;-~]*\))?))"),
        word(R"( ([A-Z])([+-]?[0-9]+(?:\.[0-9]+)?))");
    const std::string order = "G XYZUVWPQRABC IJK F E D H L S T M";
    std::istringstream in(text);
    std::string line, last;
    if (!std::getline(in, line) || !std::regex_match(line, start)) return "a program begins with %: " + line;
    std::set<long> numbers;
    for (; std::getline(in, line); last = line) {
        if (std::regex_match(line, comment)) continue;
        if (last.ends_with(" M30") || last.ends_with(" M02")) return "nothing comes behind the end: " + line;
        std::smatch parts;
        if (!std::regex_match(line, parts, block)) return "a block is its number and words: " + line;
        if (!numbers.insert(std::stol(parts[2])).second) return "a number stands once: " + line;
        if (*numbers.rbegin() != std::stol(parts[2])) return "numbers rise: " + line;
        const std::string words = parts[3];
        std::size_t rank = 0;
        std::set<std::string> seen;
        for (std::sregex_iterator at(words.begin(), words.end(), word), end; at != end; ++at) {
            const std::string letter = (*at)[1];
            if (order.find(letter) < rank) return "words stand in the standard's order: " + line;
            rank = order.find(letter);
            if (letter != "G" && letter != "M" && !seen.insert(letter).second) return "a letter stands once: " + line;
            if ((letter == "G" || letter == "M") && !std::regex_match((*at)[2].str(), std::regex("[0-9]{2,3}")))
                return "a code has two digits or three: " + line;
        }
    }
    return std::regex_match(last, std::regex("[N:][0-9]+ M(02|30)")) ? "" : "the last block is M02 or M30: " + last;
}

TEST(WindingBlockSyntax, TheGrammarKnowsWhatIsWrong) {
    EXPECT_EQ(broken("%1\n(A COMMENT)\nN10 G33 Z1.5 C20 K0.1 S100 M03\nN20 M30\n"), "");
    EXPECT_EQ(broken("N10 M30\n"), "a program begins with %: N10 M30");
    EXPECT_EQ(broken("%\nG00 Z1\nN20 M30\n"), "a block is its number and words: G00 Z1");
    EXPECT_EQ(broken("%\nN10 Z1 G00\nN20 M30\n"), "words stand in the standard's order: N10 Z1 G00");
    EXPECT_EQ(broken("%\nN10 G00 Z1 Z2\nN20 M30\n"), "a letter stands once: N10 G00 Z1 Z2");
    EXPECT_EQ(broken("%\nN10 G00 Z1.\nN20 M30\n"), "a block is its number and words: N10 G00 Z1.");
    EXPECT_EQ(broken("%\nN10 M00 (A (B))\nN20 M30\n"), "a block is its number and words: N10 M00 (A (B))");
    EXPECT_EQ(broken("%\nN10 M00 (50 %)\nN20 M30\n"), "a block is its number and words: N10 M00 (50 %)");
    EXPECT_EQ(broken("%\nN20 G00\nN10 M30\n"), "numbers rise: N10 M30");
    EXPECT_EQ(broken("%\nN10 G00 Z1\n"), "the last block is M02 or M30: N10 G00 Z1");
}

TEST(WindingBlockSyntax, EveryDemoProgramKeepsIt) {
    for (const char* name : demos)
        for (const char* winder : winders) EXPECT_EQ(broken(program(demo(name), both(winder))), "") << name << winder;
}

TEST(WindingBlockSyntax, NamesOfAnyAlphabetKeepIt) {
    design::Design design = demo("direct-box");
    design.name = "Übertrager (50 %): Ω µ \"1\" 変圧器";
    EXPECT_EQ(broken(program(design, both("single-traverse"))), "");
}

TEST(WindingBlockSyntax, RandomProgramsKeepIt) {
    RandomDesigns designs(3);
    for (int k = 0; k < 12; ++k) {
        const design::Design design = designs.next();
        const int leg = design.coil.front().leg;
        bool wound = false;
        for (const auto& place : design.coil)
            for (const auto& item : place.order) wound = wound || (place.leg == leg && item.section() != nullptr);
        if (!wound) continue;
        EXPECT_EQ(broken(program(design, both(winders[k % 3]), leg)), "") << k;
    }
}

}  // namespace block_syntax_test
