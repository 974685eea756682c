// SPDX-License-Identifier: GPL-3.0-or-later
// What the winding sheet says of the cases that need a word of their own.
#include "shop/winding_sheet.h"

#include <gtest/gtest.h>

#include "demos.h"

namespace winding_sheet_test {

using demos::demo;
using demos::shopCatalog;
shop::WindingSheet sheetOf(const design::Design& design) {
    return shop::windingSheet(design, shopCatalog(), {"2026-03-14", std::string(64, 'a')});
}
std::string wordsOf(const shop::WindingStep& step) {
    std::string all = step.title + "\n";
    for (const auto& fact : step.facts) all.append(fact.what).append(": ").append(fact.words).append("\n");
    for (const auto& action : step.actions) all.append(action.words).append("\n");
    return all;
}
std::string wordsOf(const shop::Finishing& finishing) {
    std::string all;
    for (const auto& step : finishing.steps)
        for (const auto& words : step.words) all.append(words).append("\n");
    return all;
}
bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

TEST(WindingSheet, NamesStepsByPlaceAndItem) {
    const auto sheet = sheetOf(demo("direct-box"));
    ASSERT_EQ(sheet.steps.size(), 10u);
    EXPECT_EQ(sheet.steps[0].number, "1.1");
    EXPECT_EQ(sheet.steps[9].number, "1.10");
    EXPECT_TRUE(has(wordsOf(sheet.steps[0]), "P.a, 2700 turns"));
}

TEST(WindingSheet, FineWireGetsSkeins) {
    auto design = demo("direct-box");
    EXPECT_FALSE(has(wordsOf(sheetOf(design).steps[0]), "skein"));
    design.windings[0].wire.key = "AWG 43 single";  // 0.056 mm
    const auto sheet = sheetOf(design);
    EXPECT_TRUE(has(wordsOf(sheet.steps[0]), "twist a skein of 4 strands"));
    bool ruled = false;
    for (const auto& rule : sheet.rules) ruled = ruled || rule.what == "Fine wire";
    EXPECT_TRUE(ruled);
}

TEST(WindingSheet, AnOppositeSenseIsSaidLoud) {
    auto design = demo("direct-box");
    design.coil[0].order[0].section()->reversed = true;
    const auto sheet = sheetOf(design);
    EXPECT_TRUE(has(wordsOf(sheet.steps[0]), "the OTHER way: clockwise"));
    EXPECT_FALSE(has(wordsOf(sheet.steps[6]), "OTHER"));
}

TEST(WindingSheet, EndsGoToPinsLeadsOrToTheNextSection) {
    const auto box = sheetOf(demo("direct-box"));
    EXPECT_TRUE(has(wordsOf(box.steps[0]), "Start of P.a: 3 turns round pin 1"));
    EXPECT_TRUE(has(wordsOf(box.steps[0]), "keep 150 mm for P.b, which comes later"));
    EXPECT_TRUE(has(wordsOf(box.steps[8]), "join it to the end that was kept of P.a"));
    // Pin 8 stands at the high flange, pin 7 too; the start lies at the low one.
    EXPECT_TRUE(
        has(wordsOf(box.steps[6]), "round pin 7, a strain loop of 3 mm before it, across the coil in sleeving"));
    const auto ribbon = sheetOf(demo("ribbon-step-up"));
    EXPECT_TRUE(has(wordsOf(ribbon.steps[4]), "solder the white lead (ribbon +), cut 75 mm, 60 mm of it free"));
    EXPECT_TRUE(has(wordsOf(ribbon.steps[4]), "3 wires in hand, side by side"));
    EXPECT_TRUE(has(wordsOf(ribbon.steps[4]), "turns side by side"));
}

TEST(WindingSheet, TapsAndEndsStandAtTheirCounterReading) {
    auto design = demo("direct-box");
    design.terminals.push_back({"T", 10, "", 0, nullptr});
    design.windings[0].taps.push_back({1000, "T", nullptr});
    const auto sheet = sheetOf(design);
    bool tap = false, finish = false;
    for (const auto& action : sheet.steps[0].actions) {
        if (has(action.words, "Tap of P.a")) {
            tap = true;
            EXPECT_EQ(action.counter, 1000);
            EXPECT_TRUE(has(action.words, "pin 10 (T)"));
        }
        if (has(action.words, "Finish of P.a")) {
            finish = true;
            EXPECT_EQ(action.counter, 2700);
        }
    }
    EXPECT_TRUE(tap && finish);
}

TEST(WindingSheet, AFoilShieldKeepsItsGap) {
    const auto sheet = sheetOf(demo("splitter"));
    const std::string words = wordsOf(sheet.steps[2]);
    EXPECT_TRUE(has(words, "Both edges must not touch"));
    EXPECT_TRUE(has(words, "the green lead (shield 1), cut 165 mm, 150 mm of it free"));
    EXPECT_TRUE(has(words, "away from the gap"));
}

TEST(WindingSheet, AnOpenWindingAsShieldStaysOpen) {
    auto design = demo("splitter");
    auto& shield = *design.coil[0].order[2].shield();
    shield.form = design::ShieldForm::Winding;
    shield.wire.key = "AWG 38 single";
    const auto sheet = sheetOf(design);
    EXPECT_TRUE(has(wordsOf(sheet.steps[2]), "leave it open"));
    // 21.5 mm between the flanges, 0.113 mm overall.
    EXPECT_EQ(sheet.steps[2].turns, 190);
}

TEST(WindingSheet, ResistanceIsWhatTheWireHas) {
    const auto design = demo("direct-box");
    const auto sheet = sheetOf(design);
    double sum = 0;
    for (const std::size_t k : {0u, 8u}) sum += sheet.steps[k].checks.at(0).expected;
    ASSERT_EQ(sheet.steps[8].checks.size(), 2u);
    EXPECT_NEAR(sheet.steps[8].checks[1].expected, sum, 1e-9 * sum);
    // By hand: AWG 38 has 2.165 ohm a metre (ASTM B258 diameter, IEC 60028 copper: derived); the bobbin of 18.3 x 18.3
    // mm with walls of 0.9 mm begins with turns of 79 mm, 13 layers of 0.136 mm with their film end at 90 mm.
    EXPECT_NEAR(sheet.steps[0].checks[0].expected, 2700 * 0.0845 * 2.165, 0.02 * 496);
}

TEST(Finishing, CountsMixedStacksAndHalvesTheSpacer) {
    auto design = demo("line-unit");
    std::string words = wordsOf(sheetOf(design).finishing);
    EXPECT_TRUE(has(words, "in blocks"));
    EXPECT_TRUE(has(words, "Interleave one by one"));
    EXPECT_TRUE(has(words, "Never hammer or flex nickel"));
    design.core.joint = design::Joint::Butt;
    design.core.gap = 100e-6;
    design.core.pattern = design::StackPattern::Alternating;
    words = wordsOf(sheetOf(design).finishing);
    EXPECT_TRUE(has(words, "Spacer 50 µm thick at each joint"));
    EXPECT_TRUE(has(words, "alternating through the whole height"));
}

TEST(Finishing, SaysWhatTheUnitIsFilledWith) {
    auto design = demo("line-unit");
    EXPECT_TRUE(has(wordsOf(sheetOf(design).finishing), "stays dry"));
    design.filling.emplace();
    design.filling->compound.key = "epoxy";
    design.filling->hardPotted = true;
    const std::string words = wordsOf(sheetOf(design).finishing);
    EXPECT_TRUE(has(words, "Pot hard: Cast epoxy"));
    EXPECT_TRUE(has(words, "measure the inductance before and after"));
}

TEST(Finishing, CautionsDeferToRulesSheetsAndLicence) {
    std::string all;
    for (const auto& words : shop::cautions()) all += words + "\n";
    for (const char* word : {"local rules", "safety sheet", "licensed", "isocyanates", "hipot", "spindle", "Nickel",
                             "short the winding", "discharge", "ventilation", "whips"})
        EXPECT_TRUE(has(all, word)) << word;
}

}  // namespace winding_sheet_test
