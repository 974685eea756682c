// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/datasheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace datasheet_test {

const std::string references = COILWRIGHT_SOURCE_DIR "/tests/references/";
const std::string sampleFile = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";

design::Design opened(const std::string& path) {
    return *exchange::readDesign(exchange::readFile(path), path, {}).design;
}
shop::Datasheet sheetOf(const design::Design& design) {
    return shop::datasheet(design, *analysis::answer(design, {}), {}, {"2026-03-14", std::string(64, 'a')});
}
const shop::PinoutRow& row(const shop::Datasheet& sheet, const std::string& terminal) {
    for (const shop::PinoutRow& one : sheet.pinout)
        if (one.terminal == terminal) return one;
    throw std::out_of_range(terminal);
}
std::string value(const std::vector<shop::ValueRow>& rows, const std::string& what, const std::string& condition = "") {
    for (const shop::ValueRow& one : rows)
        if (one.what == what && one.condition == condition) return one.value;
    return "no row";
}

TEST(DatasheetTest, SaysWhereEachTerminalIsAndWhatItDoes) {
    const shop::Datasheet sheet = sheetOf(opened(sampleFile));
    EXPECT_EQ(row(sheet, "1"), (shop::PinoutRow{"1", "pin 1", "primary start", true}));
    EXPECT_EQ(row(sheet, "2"), (shop::PinoutRow{"2", "pin 2", "primary finish", false}));
    EXPECT_EQ(row(sheet, "4"), (shop::PinoutRow{"4", "pin 4", "secondary 1 finish, secondary 2 finish", false}));
    EXPECT_EQ(row(sheet, "tap").where, "red lead, 150 mm");
    // 50 of 60 + 60.5 turns: 41 %.
    EXPECT_EQ(row(sheet, "tap").function, "primary tap, 41 % from start");
    EXPECT_EQ(row(sheet, "SH"), (shop::PinoutRow{"SH", "lead", "shield", false}));
    EXPECT_EQ(row(sheet, "core").function, "core earth");
}

TEST(DatasheetTest, TheDotFollowsTheSenseOfTheTurns) {
    design::Design design = opened(references + "open_1_shielded_step_up.coilwright");
    EXPECT_TRUE(sheetOf(design).schematic.windings.at(1).dotAtStart);
    for (design::Item& item : design.coil.front().order)
        if (design::Section* s = item.section(); s && s->winding == "S") s->reversed = true;
    const shop::Datasheet sheet = sheetOf(design);
    EXPECT_FALSE(sheet.schematic.windings.at(1).dotAtStart);
    EXPECT_TRUE(row(sheet, "s+").dot);
    EXPECT_FALSE(row(sheet, "gnd").dot);
}

TEST(DatasheetTest, SectionsWithTheirOwnTerminalsAreDrawnApart) {
    design::Design design = opened(references + "open_2_interleaved_line.coilwright");
    design.terminals.push_back({"p2", 0, "", 0, {}});
    design.terminals.push_back({"p3", 0, "", 0, {}});
    const std::size_t before = sheetOf(design).schematic.windings.size();
    EXPECT_EQ(before, 2u);
    int seen = 0;
    for (design::Item& item : design.coil.front().order)
        if (design::Section* s = item.section(); s && s->winding == "P")
            (seen++ == 0 ? s->finish : s->start) = seen == 1 ? "p2" : "p3";
    const shop::Schematic apart = sheetOf(design).schematic;
    ASSERT_EQ(apart.windings.size(), 3u);
    EXPECT_EQ(apart.windings[0].title, "primary part 1");
    EXPECT_EQ(apart.windings[0].finish, "p2");
    EXPECT_EQ(apart.windings[1].start, "p3");
}

TEST(DatasheetTest, OutlineIsTheAssembledCoreAndItsCoil) {
    // Sheet 10/5/15 with legs and yokes of 5 mm, stack 10 mm: 30 wide, 25 long, coil 10 + 2 x 5 high.
    const shop::Outline outline = sheetOf(opened(sampleFile)).outline;
    EXPECT_NEAR(outline.width, 0.030, 1e-12);
    EXPECT_NEAR(outline.length, 0.025, 1e-12);
    EXPECT_NEAR(outline.height, 0.020, 1e-12);
    EXPECT_NEAR(outline.rowDistance, 0.020, 1e-12);
    EXPECT_EQ(outline.pins.size(), 6u);
    EXPECT_FALSE(outline.pins.back().used);
}

TEST(DatasheetTest, TwoCoilsOnTwoLegsStandOutBesideTheCore) {
    design::Design design = opened(references + "open_1_shielded_step_up.coilwright");
    catalog::Sheet sheet = *design.core.sheet.own;
    sheet.cut = catalog::SheetCut::UI;
    design.core.sheet.own = std::make_shared<catalog::Sheet>(sheet);
    design.core.kind = design::CoreKind::TwoLeg;
    const shop::Outline outline = sheetOf(design).outline;
    EXPECT_NEAR(outline.width - outline.coreWidth, sheet.windowWidth, 1e-12);
    EXPECT_NEAR(outline.height, design.core.height + sheet.windowWidth, 1e-12);
}

TEST(DatasheetTest, AgreedLimitsComeFromTheBriefButNoneThatTellsTheRecipe) {
    design::Design design = opened(sampleFile);
    design.brief.promises.push_back({"fill", "", "", {}, 0.9, "", {}});
    design.brief.promises.push_back({"wire_length.P", "", "", {}, 20, "", {}});
    design.brief.promises.push_back({"rejection_10ohm_1kHz", "", "", 60, {}, "", {}});
    const shop::Datasheet sheet = sheetOf(design);
    EXPECT_EQ(value(sheet.agreed, "−3 dB, high", "output"), "at least 20 kHz");
    EXPECT_EQ(value(sheet.agreed, "DC resistance", "primary"), "at most 60 Ω");
    EXPECT_EQ(value(sheet.agreed, "Size", "length × width × height"), "at most 30 mm × 30 mm × 25 mm");
    EXPECT_EQ(value(sheet.agreed, "Isolation"), "500 V");
    EXPECT_EQ(value(sheet.agreed, "Rejection, 10 Ω unequal, 1 kHz"), "at least 60 dB");
    EXPECT_EQ(sheet.agreed.size(), 7u);
    EXPECT_EQ(sheet.agreed.at(3).value, "20 Hz: −1 dB to +1 dB");
    EXPECT_EQ(sheet.agreed.at(4).value, "20 kHz: at least −1 dB");
}

TEST(DatasheetTest, TypicalValuesAreThoseOfTheAnswer) {
    const design::Design design = opened(references + "open_1_shielded_step_up.coilwright");
    const auto answer = analysis::answer(design, {});
    const shop::Datasheet sheet = shop::datasheet(design, *answer, {}, {"2026-03-14", "abc"});
    EXPECT_EQ(value(sheet.typical, "Ratio", "primary to secondary"), "1 : 5.00");
    const analysis::Trace* trace = answer->trace("response");
    const auto at = [&](double f) {
        const auto it = std::lower_bound(trace->frequency.begin(), trace->frequency.end(), f);
        return trace->curves[0].y[static_cast<std::size_t>(it - trace->frequency.begin())];
    };
    std::string text = value(sheet.typical, "Response, 20 Hz", "re 1 kHz");
    ASSERT_TRUE(text.starts_with("−")) << text;
    // A grid of 600 points is within 3 % of 20 Hz: 0.05 dB on a slope of 6 dB an octave.
    EXPECT_NEAR(-std::stod(text.substr(3)), at(20) - at(1000), 0.15);
    // Nothing is promised where the core's saturation is not known.
    EXPECT_EQ(value(sheet.typical, "Maximum level, 20 Hz"), "no row");
}

TEST(DatasheetTest, CurvesOutsideValidityCarryTheirBandAndTheMaskLiesOnTheLevelAt1kHz) {
    const design::Design design = opened(sampleFile);
    const auto answer = analysis::answer(design, {});
    const shop::Datasheet sheet = shop::datasheet(design, *answer, {}, {"2026-03-14", "abc"});
    const shop::Chart& response = sheet.charts.front();
    EXPECT_EQ(response.valid, answer->trace("response")->valid);
    ASSERT_EQ(response.mask.size(), 2u);
    EXPECT_NEAR(*response.mask[0].high - *response.mask[0].low, 2, 1e-12);
    EXPECT_FALSE(response.mask[1].high.has_value());
}

TEST(DatasheetTest, SaysHowToConnectAndWhatItIsNotFor) {
    const shop::Datasheet sheet = sheetOf(opened(sampleFile));
    std::string all;
    for (const auto& [head, paragraphs] : sheet.notes)
        for (const std::string& words : paragraphs) all += words + "\n";
    EXPECT_NE(all.find("Input: 1 (+) and 2 (−), 150 Ω source, balanced."), std::string::npos) << all;
    EXPECT_NE(all.find("Join SH and 4."), std::string::npos);
    EXPECT_NE(all.find("SW goes to the earth or screen"), std::string::npos);
    EXPECT_NE(all.find("Phantom supply"), std::string::npos);
    EXPECT_NE(all.find("Not for mains isolation or protective separation unless"), std::string::npos);
}

}  // namespace datasheet_test
