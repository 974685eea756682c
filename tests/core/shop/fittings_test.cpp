// SPDX-License-Identifier: GPL-3.0-or-later
// Fittings and what comes off reels, on every paper that has to name them.
#include <gtest/gtest.h>

#include <cmath>

#include "demos.h"
#include "design/check.h"
#include "shop/bill.h"
#include "shop/datasheet_parts.h"
#include "shop/fetch_list.h"
#include "shop/traveller.h"
#include "shop/winding_sheet.h"
#include "units/fault.h"

namespace fittings_test {

using demos::demo;
using demos::shopCatalog;
const shop::Issue issue{"2026-03-14", std::string(64, 'a')};

design::Design fitted() {
    design::Design d = demo("microphone-input");
    d.fittings = {
        {"frame-EI48", 1, false, nullptr}, {"bolt-M3-steel", 4, true, nullptr}, {"can-EI48", 1, false, nullptr}};
    d.sundries.lead = "lead-0.14";
    d.sundries.sleeving = "sleeving-1";
    d.sundries.tape = "tape-12";
    d.terminals.push_back({"screen lead", 0, "green", 0.1, nullptr});
    return d;
}

const shop::BillLine& line(const shop::Bill& bill, const std::string& part) {
    for (const auto& one : bill.lines)
        if (one.part == part) return one;
    throw std::out_of_range(part);
}
bool any(const std::vector<std::string>& words, const std::string& part) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& one) { return one.find(part) != std::string::npos; });
}

TEST(Fittings, OfADesignAreWithoutFaultWhenInsulated) {
    const design::Design d = fitted();
    for (const auto& fault : design::check(d, shopCatalog(), "f")) ADD_FAILURE() << units::sentence(fault);
    design::Design touching = d;
    touching.fittings[1].insulated = false;
    EXPECT_EQ(design::check(touching, shopCatalog(), "f").size(), 1U);
}

TEST(Fittings, AreCountedWeighedAndPriced) {
    shop::Prices prices;
    prices.currency = "EUR";
    prices.parts["frame-EI48"] = {"piece", 1.5, 0};
    prices.parts["bolt-M3-steel"] = {"piece", 0.05, 100};
    prices.parts["lead-0.14 green"] = {"m", 0.4, 0};
    prices.parts["tape-12"] = {"m", 0.2, 0};
    const design::Design d = fitted();
    const shop::Bill bill = shop::bill(d, shopCatalog(), issue, &prices);
    EXPECT_EQ(line(bill, "frame-EI48").cost, 1.5);
    EXPECT_EQ(line(bill, "bolt-M3-steel").amount, 4);
    EXPECT_NEAR(*line(bill, "bolt-M3-steel").cost, 0.2, 1e-12);
    EXPECT_NEAR(line(bill, "lead-0.14 green").amount, 0.115, 1e-12);  // 15 mm go under the tape
    EXPECT_NE(line(bill, "frame-EI48").what.find("g"), std::string::npos);
    EXPECT_EQ(line(bill, "sleeving-1").unit, "m");
    EXPECT_TRUE(any(bill.unpriced, "can-EI48 (per piece)"));
    // Two turns over the coil at its greatest and least thinkable length, and 20 mm an end.
    const auto build = coil::layOut(d, shopCatalog());
    std::size_t sections = 0;
    for (const auto& winding : d.windings) sections += design::sectionsOf(d, winding).size();
    const auto& room = build.fill.front().room;
    const double ends = 0.04 * static_cast<double>(sections), beside = std::ceil(room.height() / 0.012);
    const double least = ends + 2 * beside * shop::wrapLength(build, room.x0),
                 most = 1.1 * (ends + beside * (2 * shop::wrapLength(build, room.x1) + 0.005));
    EXPECT_GT(line(bill, "tape-12").amount, least);
    EXPECT_LT(line(bill, "tape-12").amount, most);
    const auto materials = shop::materialsOf(d, build, shopCatalog());
    EXPECT_NEAR(materials.tape.mass, materials.tape.length * shopCatalog().sundries.at("tape-12").massPerMetre, 1e-12);
    EXPECT_NEAR(materials.pieces.at(1).mass, 4 * shopCatalog().fittings.at("bolt-M3-steel").mass, 1e-12);
}

TEST(Fittings, HaveAJobOfFinishingAndALineOfTheTraveller) {
    const auto sheet = shop::windingSheet(fitted(), shopCatalog(), issue);
    const auto& steps = sheet.finishing.steps;
    const auto at = std::find_if(steps.begin(), steps.end(),
                                 [](const shop::FinishingStep& step) { return step.title == "Frame, clamps, can"; });
    ASSERT_NE(at, steps.end());
    EXPECT_EQ(at->number, "F4");
    EXPECT_TRUE(any(at->words, "4 bolts: Bolt M3 with nut, steel"));
    EXPECT_TRUE(any(at->words, "a washer that insulate it from sheets and frame"));
    EXPECT_TRUE(any(at->words, "Ohmmeter between every insulated part and the core: open"));
    EXPECT_TRUE(any(at->words, "Can: no blow, no bend"));
    EXPECT_TRUE(any(steps.front().words, "Leads of Lead wire 0.14 mm², PVC, in this order: green (screen lead)"));
    EXPECT_TRUE(any(steps.front().words, "Outer wrap: 2 turns of Polyester tape, 12 mm wide"));
    const auto paper = shop::traveller(fitted(), shopCatalog(), issue);
    EXPECT_TRUE(std::any_of(paper.operations.begin(), paper.operations.end(),
                            [](const auto& one) { return one.words == "Put frame, clamps, bolts or can on"; }));
    int rows = 0;
    for (const auto& row : paper.materials) rows += row.what.starts_with("Frame: ") || row.what.starts_with("Bolt: ");
    EXPECT_EQ(rows, 2);
}

TEST(Fittings, ChangeNothingWhereThereAreNone) {
    const auto sheet = shop::windingSheet(demo("microphone-input"), shopCatalog(), issue);
    for (const auto& step : sheet.finishing.steps) EXPECT_NE(step.title, "Frame, clamps, can");
    EXPECT_EQ(sheet.materials.tape.length, 0);
    EXPECT_TRUE(sheet.materials.pieces.empty());
}

TEST(Fittings, MakeTheUnitAsLargeAsTheCan) {
    const auto bare = shop::outlineOf(demo("microphone-input"), shopCatalog()),
               canned = shop::outlineOf(fitted(), shopCatalog());
    const auto& can = shopCatalog().fittings.at("can-EI48");
    EXPECT_LT(bare.width, canned.width);
    EXPECT_EQ(canned.width, can.width.value);
    EXPECT_EQ(canned.length, can.length.value);
    EXPECT_EQ(canned.height, can.height.value);
    EXPECT_EQ(canned.coreWidth, bare.coreWidth);
}

}  // namespace fittings_test
