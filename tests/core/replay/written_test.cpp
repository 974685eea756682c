// SPDX-License-Identifier: GPL-3.0-or-later
// What stands in a written program and step table.
#include <gtest/gtest.h>

#include <sstream>

#include "exchange/step_table.h"
#include "exchange/winding_strokes.h"
#include "winding_cases.h"

namespace written_test {

using namespace winding_cases;

exchange::WindingPlan plan(const design::Design& design, const std::string& winder) {
    return exchange::windingPlan(design, coil::layOut(design, shop()), shop(), both(winder).winder, 1);
}

TEST(WrittenProgram, HeadSaysCautionAndThatItCarriesTheRecipe) {
    for (const char* winder : winders) {
        const std::string text = program(demo("splitter"), both(winder));
        for (const char* words : {"DRY RUN FIRST", "GUARDS CLOSED", "MACHINE'S MAKER AND THE LOCAL RULES RULE",
                                  "CARRIES THE WINDING RECIPE, NOT FOR CUSTOMERS"})
            EXPECT_LT(text.find(words), text.find("\n:")) << winder << ": " << words;
        EXPECT_NE(exchange::stepTable(plan(demo("splitter"), winder), both(winder).winder).find("# CAUTION, dry run"),
                  std::string::npos);
    }
}

TEST(WrittenProgram, EverySectionBeginsWithAMainBlockBehindItsStepOfTheSheet) {
    const std::string text = program(demo("ribbon-step-up"), both("single-traverse"));
    EXPECT_NE(text.find("(WINDING SHEET STEP 1.1, SECTION S.A, 240 TURNS OF AWG 35, SINGLE BUILD, "), std::string::npos)
        << text;
    EXPECT_NE(text.find("(WINDING SHEET STEP 1.3, SHIELD SHIELD)\n:"), std::string::npos);
    EXPECT_NE(text.find("M00 (MSG LEAD P.A START, LEAD TO TERMINAL RIBBON +)"), std::string::npos);
}

TEST(WrittenProgram, FineWireIsSplicedToASkein) {
    design::Design design = demo("direct-box");
    design.windings[0].wire.key = "AWG 44 single";  // 0.050 mm bare
    const std::string text = program(design, both("single-traverse"));
    EXPECT_NE(text.find("M00 (MSG SPLICE P.A START, SPLICE TO A SKEIN)"), std::string::npos) << text.substr(0, 2000);
    EXPECT_EQ(said(text, design, both("single-traverse")), "");
}

TEST(WrittenProgram, SameSideSectionsGoBackBetweenLayers) {
    design::Design design = demo("direct-box");
    auto* section = design.coil[0].order[0].section();
    section->traverse = design::Traverse::SameSide;
    section->starts = design::End::High;
    const auto steps = plan(design, "single-traverse").steps;
    ASSERT_GT(steps[0].layers.size(), 2U);
    for (const auto& layer : steps[0].layers) EXPECT_FALSE(layer.fromLow);
    for (const auto& stroke : exchange::strokes(steps[0], both("single-traverse").winder))
        EXPECT_EQ(stroke.rests, stroke.first == steps[0].layers[static_cast<std::size_t>(stroke.layer) - 1].first);
    EXPECT_EQ(said(program(design, both("single-traverse")), design, both("single-traverse")), "");
}

TEST(WrittenProgram, HalvesAndTapsAddUp) {
    design::Design design = demo("direct-box");
    design.coil[0].order[0].section()->turns = 100.5;
    design.windings[0].taps.push_back({33.25, "3"});
    for (const char* winder : {"single-traverse", "six-spindle"}) {
        double turns = 0;
        for (const auto& stroke : exchange::strokes(plan(design, winder).steps[0], both(winder).winder))
            turns += stroke.turns;
        EXPECT_NEAR(turns, 100.5, 1e-9);
    }
    // A counter of tenths rounds the tap, not the section.
    double turns = 0;
    for (const auto& stroke : exchange::strokes(plan(design, "hand-guided").steps[0], both("hand-guided").winder))
        turns += stroke.turns;
    EXPECT_NEAR(turns, 100.5, 1e-9);
    for (const char* winder : winders) EXPECT_EQ(said(program(design, both(winder)), design, both(winder)), "");
}

TEST(WrittenProgram, WhatTheMachineDoesNotHoldIsRefused) {
    auto small = both("single-traverse");
    small.winder.maximumBlocks = 50;
    try {
        static_cast<void>(program(demo("microphone-input"), small));
        FAIL();
    } catch (const units::BadInput& bad) {
        const std::string what = bad.what();
        EXPECT_EQ(what.substr(0, 38), "Single-spindle traverse winder: found ");
        EXPECT_NE(what.find(" blocks; allowed is up to 50 blocks, what the machine holds."), std::string::npos) << what;
    }
    auto narrow = both("single-traverse");
    narrow.winder.traverse->high = 0.01;
    try {
        static_cast<void>(program(demo("microphone-input"), narrow));
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_NE(std::string(bad.what()).find("; allowed is -5.00 mm to 10.0 mm, the machine's travel."),
                  std::string::npos)
            << bad.what();
    }
}

TEST(StepTable, ShowsWhatRoundingThePitchDoes) {
    auto coarse = both("single-traverse").winder;
    coarse.pitchDecimals = 2;
    const std::string table = exchange::stepTable(plan(demo("direct-box"), "single-traverse"), coarse);
    std::istringstream in(table);
    std::string line;
    int layers = 0;
    while (std::getline(in, line)) {
        if (!line.starts_with("1.1,") || line.find(",,,") != std::string::npos) continue;
        ++layers;
        if (layers > 1) continue;
        // P.a: the chamber's 24.5 mm hold 216 turns of AWG 38 at 0.113426 mm; at 0.11 mm they would be 222.
        EXPECT_NE(line.find(",216,24.5000,0.113426,0.11,222,low to high,clockwise,"), std::string::npos) << line;
    }
    EXPECT_EQ(layers, 13);
    EXPECT_NE(
        table.find("step,section,layer,turns,width_mm,pitch_mm,pitch_rounded_mm,turns_at_rounded_pitch,direction,"),
        std::string::npos);
    EXPECT_NE(table.find(",paper,"), std::string::npos);
    EXPECT_NE(table.find(",shield,"), std::string::npos);
}

}  // namespace written_test
