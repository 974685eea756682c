// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/words.h"

#include <gtest/gtest.h>

#include "exchange/read_file.h"
#include "shop/lengths.h"
#include "units/fault.h"

namespace words_test {

std::string faultsOf(const std::string& text) {
    try {
        (void)shop::readWords(text, "w.csv");
    } catch (const units::BadInput& bad) {
        std::string all;
        for (const auto& fault : bad.faults) all += units::sentence(fault) + "\n";
        return all;
    }
    return "none";
}

TEST(Words, OfEnglishAreThePhrasesThemselves) {
    const shop::Words say;
    EXPECT_EQ(say("%1 of %2, 5 %", {"2", "3"}), "2 of 3, 5 %");
    EXPECT_EQ(say.number("4.70 kΩ"), "4.70 kΩ");
    EXPECT_TRUE(say.missing().empty());
}

TEST(Words, OfATableTakeItsWordsItsOrderAndItsDecimalSign) {
    const shop::Words say =
        shop::readWords("# for people\nenglish,Test\n.,\",\"\n\"%1, then %2\",%2 nach %1\n", "w.csv");
    EXPECT_EQ(say.language(), "Test");
    EXPECT_EQ(say("%1, then %2", {"a", "b"}), "b nach a");
    EXPECT_EQ(say.number("0.5 dB at 1.5 kHz, rev 2."), "0,5 dB at 1,5 kHz, rev 2.");
    EXPECT_EQ(say("unheard of"), "unheard of");
    EXPECT_EQ(say.missing(), (std::set<std::string>{"unheard of"}));
}

TEST(Words, SayWhatIsWrongAndWhere) {
    EXPECT_EQ(faultsOf(""), "w.csv: line 0: found no words; allowed is english,LANGUAGE in the first line.\n");
    EXPECT_EQ(faultsOf("deutsch,Deutsch\n"),
              "w.csv: line 1: found \"deutsch\"; allowed is english,LANGUAGE in the first line.\n");
    EXPECT_EQ(faultsOf("english,Deutsch\nname\n"),
              "w.csv: line 2: found \"name\"; allowed is a phrase, a comma and its words.\n");
    EXPECT_EQ(faultsOf("english,Deutsch\n%1 of %2,%1 von\n"),
              "w.csv: line 2: found \"%1 von\"; allowed is words with the same %1, %2 … as \"%1 of %2\".\n");
    EXPECT_EQ(faultsOf("english,Deutsch\nname,Name\nname,Namen\n"),
              "w.csv: line 3: found \"name\" a second time; allowed is each phrase once.\n");
}

TEST(Words, TheGermanTableIsSound) {
    const std::string file = COILWRIGHT_SOURCE_DIR "/resources/words/de.csv";
    const shop::Words say = shop::readWords(exchange::readFile(file), file);
    EXPECT_EQ(say.language(), "Deutsch");
    EXPECT_EQ(say("Datasheet"), "Datenblatt");
    EXPECT_GT(say.table().size(), 150u);
}

TEST(LengthsOnPaper, AreMillimetresOrInchesAsFine) {
    // 1 in = 25.4 mm exactly (international inch), 1 mil = 25.4 µm.
    const shop::Lengths mm, in{true};
    EXPECT_EQ(mm.size(0.0254), "25.4 mm");
    EXPECT_EQ(in.size(0.0254), "1.000 in");
    EXPECT_EQ(in.size(0.0015875), "0.062 in");  // a sixteenth is 0.0625: half to even
    EXPECT_EQ(in.both(0.000127, 3), "0.0050 in (0.127 mm)");
    EXPECT_EQ(mm.both(0.000127, 3), "0.127 mm");
    EXPECT_EQ(mm.thin(25.4e-6), "25.4 µm");
    EXPECT_EQ(in.thin(25.4e-6), "1.00 mil");
    EXPECT_EQ(in.cut(0.0254), "1.00 in");
    EXPECT_EQ(in.cut(0.0255), "1.05 in");  // never too short
    EXPECT_EQ(mm.cut(0.1001), "101 mm");
    EXPECT_EQ(in.exact(0.15), "5.9055 in");
    EXPECT_EQ(in.figure(0.0508), "2.000");
    // 1 kV/mm is 25.4 V over a mil.
    EXPECT_EQ(mm.stress(5e6), "5.0 kV/mm");
    EXPECT_EQ(in.stress(5e6), "127 V/mil (5.0 kV/mm)");
    EXPECT_STREQ(in.unit(), "in");
}

}  // namespace words_test
