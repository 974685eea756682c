// SPDX-License-Identifier: GPL-3.0-or-later
// Samples that break a promise, spun again: one change, every promise kept, and every line that it alters.
#include "seek/respin.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "demos.h"
#include "design/difference.h"
#include "design/edit.h"
#include "exchange/load_tolerances.h"
#include "spread/likeliest.h"
#include "units/fault.h"

namespace respin_test {

using demos::shop;

bool keepsAll(const design::Design& unit) {
    const auto promises = analysis::answer(unit, shop())->promises;
    return std::none_of(promises.begin(), promises.end(),
                        [](const auto& p) { return p.standing == analysis::Standing::Broken; });
}
double figure(const design::Design& d, const std::string& name) {
    return analysis::answer(d, shop())->figure(name)->value;
}

/// A line of a sheet or bill is told as it was and as it is: with all of them put in place the papers are the new ones.
void expectTrue(const seek::Respin& r, const design::Design& before) {
    const auto linesOf = [](const design::Design& d) {
        std::multiset<std::string> all;
        for (const auto& line : shop::linesOf(shop::windingSheet(d, shop(), {}))) all.insert(line.place + line.words);
        for (const auto& line : shop::linesOf(shop::bill(d, shop(), {}, nullptr))) all.insert(line.place + line.words);
        return all;
    };
    auto lines = linesOf(before);
    for (const auto& line : r.lines) {
        if (!line.before.empty()) {
            const auto at = lines.find(line.place + line.before);
            ASSERT_NE(at, lines.end()) << line.before;
            lines.erase(at);
        }
        if (!line.after.empty()) lines.insert(line.place + line.after);
    }
    EXPECT_EQ(lines, linesOf(*r.sample.recipe));
    EXPECT_FALSE(r.lines.empty());
}

/// The microphone unit promising its low end alone, at most `limit`.
design::DesignPtr lowEnd(double limit) {
    return design::changed(*demos::design("microphone-input"), [&](design::Design& d) {
        d.brief.masks.clear();
        design::Promise low;
        low.figure = "low_3dB";
        low.atMost = limit;
        d.brief.promises = {low};
    });
}

TEST(SeekRespin, LowInductanceIsMadeUpForByTheTurnsOfAHighPass) {
    const double nominal = figure(*demos::design("microphone-input"), "low_3dB");
    const auto recipe = lowEnd(1.15 * nominal);
    const auto unit =
        design::changed(*recipe, [](design::Design& d) { d.core.stack[0].permeabilityFactor.value = 0.35; });
    const double low = figure(*unit, "low_3dB");
    ASSERT_GT(low, 1.3 * nominal);
    const auto list = seek::respun({recipe, unit}, shop(), {});
    ASSERT_EQ(list.broken.size(), 1U);
    ASSERT_TRUE(list.kept);
    const auto all = std::find_if(list.respins.begin(), list.respins.end(),
                                  [](const auto& r) { return r.what == "more turns of P and S"; });
    ASSERT_NE(all, list.respins.end());
    EXPECT_EQ(all->change, seek::Change::Turns);
    EXPECT_TRUE(keepsAll(*all->sample.unit));
    expectTrue(*all, *recipe);
    // Main inductance goes with the square of turns and the corner with its inverse (R. Lee, Electronic Transformers
    // and Circuits): N'/N = sqrt(f / f_limit). More copper resistance lowers the corner less than 2 % here.
    const double wanted = std::sqrt(low / (1.15 * nominal));
    EXPECT_NEAR(1 + all->size, wanted, 0.02 * wanted);
    // The least amount: half a per cent of turns less does not do.
    const auto fewer = design::changed(*all->sample.unit, [](design::Design& d) {
        for (auto& item : d.coil[0].order)
            if (auto* s = item.section()) s->turns.value = std::round(0.98 * s->turns);
    });
    EXPECT_FALSE(keepsAll(*fewer));
}

TEST(SeekRespin, PaperThatCameOutThickIsThinnedInFewLines) {
    // A sample of the line unit whose insulation came out thick: its leakage is wide and a promise of leakage is
    // broken.
    const auto plain = demos::design("line-unit");
    const double nominal = figure(*plain, "leakage_10kHz.A.C");
    const auto recipe = design::changed(*plain, [&](design::Design& d) {
        design::Promise leakage;
        leakage.figure = "leakage_10kHz.A.C";
        leakage.atMost = 1.08 * nominal;
        d.brief.masks.clear();
        d.brief.promises = {leakage};
    });
    const auto unit = design::changed(*recipe, [](design::Design& d) {
        for (auto& item : d.coil[0].order)
            if (auto* b = item.barrier()) b->ply.thickness.value *= 1.5;
    });
    const auto list = seek::respun({recipe, unit}, shop(), {});
    ASSERT_FALSE(list.broken.empty());
    ASSERT_TRUE(list.kept);
    const auto& first = list.respins.front();
    EXPECT_TRUE(keepsAll(*first.sample.unit));
    expectTrue(first, *recipe);
    for (std::size_t k = 1; k < list.respins.size(); ++k) EXPECT_LE(first.lines.size(), list.respins[k].lines.size());
    const bool paper = std::any_of(list.respins.begin(), list.respins.end(),
                                   [](const auto& r) { return r.change == seek::Change::Paper; });
    EXPECT_TRUE(paper);
    // One change: what differs between the recipes is of one kind, and the brief is as it was.
    EXPECT_EQ(first.sample.recipe->brief, recipe->brief);
    EXPECT_EQ(first.words, design::differences(*recipe, *first.sample.recipe));
}

TEST(SeekRespin, SheetsOfAnotherAlloyAreCountedWhole) {
    const auto plain = demos::design("line-unit");
    const double nominal = figure(*plain, "low_3dB");
    const auto recipe = design::changed(*plain, [&](design::Design& d) {
        d.brief.masks.clear();
        design::Promise low;
        low.figure = "low_3dB";
        low.atMost = 1.1 * nominal;
        d.brief.promises = {low};
    });
    const auto unit =
        design::changed(*recipe, [](design::Design& d) { d.core.stack[0].permeabilityFactor.value = 0.4; });
    const auto list = seek::respun({recipe, unit}, shop(), {});
    ASSERT_FALSE(list.broken.empty());
    ASSERT_TRUE(list.kept);
    const auto share = std::find_if(list.respins.begin(), list.respins.end(),
                                    [](const auto& r) { return r.change == seek::Change::SheetShare; });
    ASSERT_NE(share, list.respins.end());
    const auto& core = share->sample.recipe->core;
    EXPECT_NEAR(core.stack[0].share + core.stack[1].share, 1, 1e-12);
    const double sheets = share->size * recipe->core.height * recipe->core.stackingFactor / core.stack[0].thickness;
    EXPECT_NEAR(sheets, std::round(sheets), 1e-9);
    expectTrue(*share, *recipe);
}

TEST(SeekRespin, AButtJointsGapIsShortened) {
    const auto recipe = design::changed(*lowEnd(1e6), [](design::Design& d) {
        d.core.joint = design::Joint::Butt;
        d.core.gap.value = 60e-6;
    });
    const double nominal = figure(*recipe, "low_3dB");
    const auto promised =
        design::changed(*recipe, [&](design::Design& d) { d.brief.promises[0].atMost = 1.1 * nominal; });
    const auto unit = design::changed(*promised, [](design::Design& d) { d.core.gap.value = 80e-6; });
    const auto list = seek::respun({promised, unit}, shop(), {});
    ASSERT_TRUE(list.kept);
    const auto gap = std::find_if(list.respins.begin(), list.respins.end(),
                                  [](const auto& r) { return r.change == seek::Change::Gap; });
    ASSERT_NE(gap, list.respins.end());
    // The sample's gap is a third wider than told, and so it stays.
    EXPECT_NEAR(gap->sample.unit->core.gap / gap->sample.recipe->core.gap, 80.0 / 60, 1e-9);
    EXPECT_LT(gap->sample.recipe->core.gap, 60e-6);
}

TEST(SeekRespin, ReadingsOfASampleLeadToARespinThatKeepsThem) {
    const auto tolerances = exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"});
    const auto recipe = demos::design("microphone-input");
    const double l = figure(*recipe, "inductance_10Hz.P");
    const auto unit = spread::likeliestUnit(*recipe, shop(), tolerances, {{"inductance_10Hz.P", 0.62 * l, 0.01 * l}});
    ASSERT_NE(unit.design, nullptr);
    EXPECT_NEAR(unit.figures[0], 0.62 * l, 0.02 * l);
    const auto list = seek::respun({recipe, unit.design}, shop(), {});
    ASSERT_FALSE(list.broken.empty());
    ASSERT_TRUE(list.kept);
    EXPECT_TRUE(keepsAll(*list.respins.front().sample.unit));
    expectTrue(list.respins.front(), *recipe);
}

TEST(SeekRespin, ASampleThatKeepsEverythingIsLeftAlone) {
    const auto recipe = demos::design("ribbon-step-up");
    const auto list = seek::respun({recipe, recipe}, shop(), {});
    EXPECT_TRUE(list.broken.empty());
    EXPECT_TRUE(list.respins.empty());
    EXPECT_EQ(list.tried, 0U);
}

TEST(SeekRespin, WhatNoSingleChangeMendsIsShownAtItsNearest) {
    const auto recipe = lowEnd(0.01);
    const auto list = seek::respun({recipe, recipe}, shop(), {});
    EXPECT_FALSE(list.kept);
    ASSERT_EQ(list.respins.size(), 1U);
    EXPECT_LT(list.respins[0].weakest, 0);
}

TEST(SeekRespin, AnotherDesignIsRefusedAsASample) {
    const auto ribbon = demos::design("ribbon-step-up"), line = demos::design("line-unit");
    try {
        seek::refuseUnlike({ribbon, line}, "sample.coilwright");
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_STREQ(bad.what(),
                     "sample.coilwright: found winding A; allowed is winding P, as in the design that was wound.");
    }
}

TEST(SeekRespin, StoppedItSaysSo) {
    const auto recipe = lowEnd(0.01);
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(seek::respun({recipe, recipe}, shop(), {}, stop.get_token()).stopped);
}

}  // namespace respin_test
