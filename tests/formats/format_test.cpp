// SPDX-License-Identifier: GPL-3.0-or-later
// A design saved in every format there has been opens, and saves as a file of today's format.
#include <gtest/gtest.h>

#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace {

TEST(Formats, Format1OpensAndSavesToTheSameBytes) {
    const std::string text = exchange::readFile(COILWRIGHT_SOURCE_DIR "/tests/formats/format_1.coilwright");
    const auto opened = exchange::readDesign(text, "format_1.coilwright", {});
    EXPECT_EQ(exchange::writeDesign(*opened.design, {}), text);
}

TEST(Formats, EveryFormatThereHasBeenOpensSavesAndOpensAgain) {
    for (int format = 1; format <= design::formatVersion; ++format) {
        const std::string name = "format_" + std::to_string(format) + ".coilwright";
        const std::string text = exchange::readFile(COILWRIGHT_SOURCE_DIR "/tests/formats/" + name);
        EXPECT_TRUE(text.starts_with("{\n  \"coilwright\": " + std::to_string(format) + ",")) << name;
        const std::string saved = exchange::writeDesign(*exchange::readDesign(text, name, {}).design, {});
        EXPECT_TRUE(saved.starts_with("{\n  \"coilwright\": " + std::to_string(design::formatVersion) + ",")) << name;
        EXPECT_EQ(exchange::writeDesign(*exchange::readDesign(saved, name, {}).design, {}), saved) << name;
    }
}

TEST(Formats, EveryKeyThatIsNotKnownIsReportedWithItsPlaceAndKept) {
    const std::string text = exchange::readFile(COILWRIGHT_SOURCE_DIR "/tests/formats/format_1.coilwright");
    const auto opened = exchange::readDesign(text, "f", {});
    const auto note = [](const std::string& place) {
        return "f: " + place + ": this key is not known; it is kept as it is.";
    };
    const std::vector<std::string> expected = {
        note("/shelf"),
        note("/brief/promises/0/asked_by"),
        note("/core/marks"),
        note("/core/sheet/drawing"),
        note("/windings/1/wire/drum"),
        note("/coil/0/order/0/section/tension"),
        note("/hook_ups/0/ports/1/across/0/kind"),
        note("/assumptions/lid"),
        note("/parts/insulation/film/entry/roll"),
    };
    EXPECT_EQ(opened.notes, expected);
}

TEST(Formats, TheReferenceCoilsAreCanonical) {
    for (const char* name : {"open_1_shielded_step_up", "open_2_interleaved_line", "open_3_two_chambers"}) {
        const std::string path = std::string(COILWRIGHT_SOURCE_DIR "/tests/references/") + name + ".coilwright";
        const std::string text = exchange::readFile(path);
        EXPECT_EQ(exchange::writeDesign(*exchange::readDesign(text, path, {}).design, {}), text) << name;
    }
}

}  // namespace
