// SPDX-License-Identifier: GPL-3.0-or-later
// The published schemas say what the tables of fields say. After a change of a table the new text stands in the build
// folder, to be read and then copied over the old one.
#include <gtest/gtest.h>

#include <fstream>

#include "exchange/read_file.h"
#include "exchange/schema.h"
#include "json/text.h"

namespace {

void expectPublished(const std::string& name, const std::string& made) {
    const std::string fresh = std::string(COILWRIGHT_BUILD_DIR "/") + name;
    std::ofstream(fresh, std::ios::binary) << made;
    const std::string published = exchange::readFile(COILWRIGHT_SOURCE_DIR "/resources/schema/" + name);
    EXPECT_TRUE(published == made) << "resources/schema/" << name << " differs from " << fresh;
}

TEST(Schema, OfDesignsIsWhatTheFieldsSay) {
    expectPublished("design.schema.json", exchange::designSchema());
}
TEST(Schema, OfCatalogFilesIsWhatTheFieldsSay) {
    expectPublished("catalog.schema.json", exchange::catalogSchema());
}

TEST(Schema, OfWindersIsWhatTheFieldsSay) {
    expectPublished("winder.schema.json", exchange::winderSchema());
}

TEST(Schema, NamesUnitsBoundsAndChoices) {
    const json::Value schema = json::read(exchange::designSchema(), "schema");
    const json::Value& core = schema["properties"]["core"];
    EXPECT_EQ(core["properties"]["kind"]["enum"], json::Value::array({"shell", "two-leg"}));
    EXPECT_EQ(core["properties"]["height"]["anyOf"][0],
              json::Value({{"type", "number"}, {"description", "in m"}, {"exclusiveMinimum", 0}, {"maximum", 0.5}}));
    EXPECT_EQ(core["required"], json::Value::array({"kind", "sheet", "stack", "height"}));
    const json::Value& section = schema["$defs"]["section"];
    EXPECT_EQ(section["properties"]["turns_per_layer"]["type"], "integer");
    EXPECT_EQ(section["properties"]["lay"]["default"], "layers");
    EXPECT_FALSE(section.contains("additionalProperties"));  // unknown keys are kept
    EXPECT_EQ(schema["$defs"]["tolerance"]["additionalProperties"], false);
}

}  // namespace
