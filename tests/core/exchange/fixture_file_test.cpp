// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/fixture_file.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "exchange/read_file.h"
#include "units/fault.h"

namespace fixture_file_test {

const std::string resources = COILWRIGHT_SOURCE_DIR "/resources";
const std::string example = resources + "/fixtures/bench.json";

std::string exampleText() {
    return exchange::readFile(example);
}
std::string changed(const std::string& from, const std::string& to) {
    std::string text = exampleText();
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}
std::vector<std::string> faults(const std::string& text) {
    try {
        (void)exchange::readFixture(text, "f.json");
    } catch (const units::BadInput& bad) {
        std::vector<std::string> all;
        for (const auto& fault : bad.faults) all.push_back(units::sentence(fault));
        return all;
    }
    return {};
}
using Sentences = std::vector<std::string>;

TEST(FixtureFile, TheExampleIsSoundAndSaysThatItIsInvented) {
    const auto fixture = exchange::readFixture(exampleText(), example);
    EXPECT_NE((fixture.title + fixture.note).find("nvented"), std::string::npos);
    EXPECT_GT(fixture.generator.resistance, 0);
    EXPECT_TRUE(fixture.plugIns.haveResistor(110));
    EXPECT_FALSE(fixture.plugIns.haveResistor(1));
    EXPECT_FALSE(design::PlugIns{}.haveResistor(0));
}

TEST(FixtureFile, ReadingWhatWasWrittenGivesTheSame) {
    const auto fixture = exchange::readFixture(exampleText(), example);
    const std::string text = exchange::writeFixture(fixture);
    EXPECT_EQ(exchange::readFixture(text, "again"), fixture);
    EXPECT_EQ(exchange::writeFixture(exchange::readFixture(text, "again")), text);
}

TEST(FixtureFile, DoubtIsTheRootOfTheSquares) {
    const design::Doubt doubt{0.03, 4};
    EXPECT_NEAR(doubt.at(100), 5, 1e-12);
    EXPECT_NEAR(doubt.at(0), 4, 1e-12);
}

TEST(FixtureFile, BadInputIsToldByFileFieldFoundAndAllowed) {
    EXPECT_EQ(faults("[]"), Sentences{"f.json: found a list; allowed is an object in curly brackets."});
    EXPECT_EQ(
        faults(changed("\"resistance\": 40", "\"resistance\": -40")),
        Sentences{"f.json: /generator/resistance: found -40; allowed is a number above 0 and up to 1000000 ohm."});
    EXPECT_EQ(faults(changed("\"highest_frequency\": 200000", "\"highest_frequency\": 2")),
              Sentences{"f.json: /generator/highest_frequency: found 2; allowed is more than the lowest, 5."});
    EXPECT_EQ(faults(changed("2027-06-30", "2027-02-30")),
              Sentences{"f.json: /upkeep/calibrations/0/until: found \"2027-02-30\"; allowed is a day as "
                        "\"2026-05-31\"."});
    EXPECT_EQ(
        faults(changed("\"ratio\": {\"share\": 0.0005}", "\"ratio\": {}")),
        Sentences{"f.json: /uncertainty/ratio: found 0; allowed is a share or a least part above 0: no instrument "
                  "is without doubt."});
}

TEST(FixtureFile, EveryFaultIsToldAtOnceAndUnknownKeysAreFaults) {
    std::string text = changed("\"greatest_level\": 26,", "");
    text.replace(text.find("\"soak_hours\": 4"), 15, "\"soak_hours\": \"long\", \"colour\": 1");
    const auto all = faults(text);
    ASSERT_EQ(all.size(), 3u);
    EXPECT_EQ(all[0], "f.json: /generator/greatest_level: found nothing; allowed is a number from -60 to 60 dBu.");
    EXPECT_EQ(all[1], "f.json: /upkeep/soak_hours: found \"long\"; allowed is a number from 0 to 200 h.");
    EXPECT_NE(all[2].find("/upkeep/colour"), std::string::npos);
}

TEST(FixtureFile, TheShopsOwnFixtureRulesOverTheExample) {
    namespace fs = std::filesystem;
    const fs::path own = fs::path(testing::TempDir()) / "fixture_file_test";
    fs::remove_all(own);
    EXPECT_EQ(exchange::fixtureFile({resources, own.string()}), example);
    fs::create_directories(own / "fixtures");
    std::ofstream(own / "fixtures" / "bench.json") << exampleText();
    EXPECT_EQ(exchange::fixtureFile({resources, own.string()}), (own / "fixtures" / "bench.json").string());
    fs::remove_all(own);
    EXPECT_THROW((void)exchange::fixtureFile({own.string()}), units::BadInput);
}

}  // namespace fixture_file_test
