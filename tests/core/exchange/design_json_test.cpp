// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/design_json.h"

#include <gtest/gtest.h>

#include "design/edit.h"
#include "exchange/migrate.h"
#include "exchange/read_file.h"
#include "json/digest.h"
#include "json/text.h"

namespace exchange {
namespace design_json_test {

std::string sampleText() {
    return readFile(COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright");
}
design::DesignPtr sample() {
    return readDesign(sampleText(), "sample", {}).design;
}

TEST(DesignJson, WhatIsWrittenReadsBackEqual) {
    const design::DesignPtr first = sample();
    EXPECT_EQ(*readDesign(writeDesign(*first, {}), "again", {}).design, *first);
}

TEST(DesignJson, OrderAndSpacingOfAFileDoNotMatter) {
    json::Value root = json::read(sampleText(), "sample");
    json::Value backwards = json::Value::object();
    for (auto it = root.end(); it != root.begin();) {
        --it;
        backwards[it.key()] = it.value();
    }
    EXPECT_EQ(*readDesign(backwards.dump(), "sample", {}).design, *sample());
}

TEST(DesignJson, DigestTellsDesignsApart) {
    const design::DesignPtr first = sample();
    EXPECT_EQ(digestOf(*first, {}), json::digest(sampleText()));
    const design::DesignPtr other = design::changed(*first, [](design::Design& d) { d.core.gap = 2e-5; });
    EXPECT_NE(digestOf(*other, {}), digestOf(*first, {}));
}

TEST(DesignJson, StoredCopiesRuleOverTheShop) {
    catalog::Catalog shop;
    shop.wires["copper 0.10"].bareDiameter = 9e-5;
    shop.wires["copper 0.10"].overallDiameter = 1e-4;
    const design::DesignPtr d = readDesign(sampleText(), "sample", shop).design;
    EXPECT_EQ(design::part(*d, d->windings[0].wire, shop)->bareDiameter.value, 1e-4);
    EXPECT_EQ(writeDesign(*d, shop), sampleText());
}

TEST(DesignJson, SavingCopiesWhatTheShopHas) {
    json::Value root = json::read(sampleText(), "sample");
    root.erase("parts");
    catalog::Catalog shop = sample()->parts;
    shop.wires["not used"] = shop.wires["copper 0.10"];
    const design::DesignPtr d = readDesign(json::write(root), "sample", shop).design;
    EXPECT_TRUE(d->parts.wires.empty());
    EXPECT_EQ(writeDesign(*d, shop), sampleText());
}

TEST(DesignJson, AKeyWithoutAValueTakesItsDefault) {
    json::Value root = json::read(sampleText(), "sample");
    root.erase("conditions");
    const design::DesignPtr d = readDesign(json::write(root), "sample", {}).design;
    EXPECT_EQ(d->conditions, design::Conditions{});
    EXPECT_FALSE(json::read(writeDesign(*d, {}), "again").contains("conditions"));
}

json::Value renameOld(json::Value file, std::vector<std::string>& notes) {
    file["name"] = file["title"];
    file.erase("title");
    notes.push_back("\"title\" is now \"name\".");
    return file;
}
json::Value doubleIt(json::Value file, std::vector<std::string>& notes) {
    file["height"] = file["half_height"].get<double>() * 2;
    notes.push_back("heights are now whole.");
    return file;
}

TEST(Migration, AppliesTheStepsInTheOrderOfTheirFormats) {
    const std::vector<MigrationStep> steps = {{2, doubleIt}, {1, renameOld}};
    const json::Value old = {{"coilwright", 1}, {"title", "a"}, {"half_height", 0.5}};
    std::vector<std::string> notes;
    const json::Value now = migrate(old, 1, 3, steps, notes);
    EXPECT_EQ(now["coilwright"], 3);
    EXPECT_EQ(now["name"], "a");
    EXPECT_EQ(now["height"], 1.0);
    EXPECT_EQ(notes, (std::vector<std::string>{"\"title\" is now \"name\".", "heights are now whole."}));
    EXPECT_EQ(old["title"], "a");
    std::vector<std::string> later;
    EXPECT_FALSE(migrate({{"coilwright", 2}, {"half_height", 1.0}}, 2, 3, steps, later).contains("name"));
    EXPECT_EQ(later.size(), 1U);
}

TEST(Migration, ThereIsAStepForEveryOlderFormat) {
    ASSERT_EQ(migrationSteps().size(), static_cast<std::size_t>(design::formatVersion - 1));
    for (std::size_t i = 0; i < migrationSteps().size(); ++i)
        EXPECT_EQ(migrationSteps()[i].from, static_cast<int>(i) + 1);
}

}  // namespace design_json_test
}  // namespace exchange
