// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/characters.h"

#include <gtest/gtest.h>

#include "units/fault.h"

namespace characters_test {

TEST(Characters, AreCountedAsUnicodeSays) {
    EXPECT_EQ(units::characterBytes(""), 0u);
    EXPECT_EQ(units::characterBytes("a"), 1u);
    EXPECT_EQ(units::characterBytes("µ"), 2u);
    EXPECT_EQ(units::characterBytes("Ω"), 2u);
    EXPECT_EQ(units::characterBytes("…"), 3u);
    EXPECT_EQ(units::characterBytes("\xF0\x9F\x8E\x99"), 4u);
    // Overlong, a surrogate, beyond the last plane, cut short, a byte that begins none: Unicode 15, table 3-7.
    for (const char* bad : {"\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x80", "\xFF", "\x80"})
        EXPECT_EQ(units::characterBytes(bad), 0u) << bad;
}

TEST(Characters, StayOnOneLine) {
    EXPECT_EQ(units::oneLine("4.7 kΩ"), "4.7 kΩ");
    EXPECT_EQ(units::oneLine("a\r\nb\tc\x7F"), "a  b c ");
    EXPECT_EQ(units::oneLine("n\xFFm\xC2"), "n?m?");
    EXPECT_EQ(units::oneLine(std::string("a\0b", 3)), "a b");
    EXPECT_EQ(units::oneLine("abcdef", 6), "abcdef");
    EXPECT_EQ(units::oneLine("abcdef", 3), "abc…");
    EXPECT_EQ(units::oneLine("abΩdef", 3), "ab…") << "not inside a character";
}

TEST(Characters, ASentenceIsOneLineOfBoundedLength) {
    EXPECT_EQ(units::sentence({"f: /a\nb", "\"x\ny\"", "text\xFF"}), "f: /a b: found \"x y\"; allowed is text?.");
    const std::string endless(1'000'000, 'x');
    EXPECT_LT(units::sentence({endless, endless, endless}).size(), 2000u);
}

}  // namespace characters_test
