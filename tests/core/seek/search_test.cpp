// SPDX-License-Identifier: GPL-3.0-or-later
// From briefs alone to designs: what is promised of a candidate is what its full answer says.
#include "seek/search.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <iostream>

#include "coil/coil_build.h"
#include "demos.h"
#include "design/check.h"
#include "magnetics/stack.h"
#include "seek/core_choice.h"

namespace search_test {

seek::Plan smallPlan() {
    seek::Plan plan;
    plan.cores = 8;
    plan.coresInOrders = 2;
    plan.orders = 2;
    plan.starts = 2;
    plan.refinements = 8;
    return plan;
}

/// Validates, lays out within its window, opens as the file it is written to, and stands to each promise as the full
/// figures say.
void expectSound(const seek::Candidate& c) {
    EXPECT_TRUE(design::check(*c.design, demos::shop(), "candidate").empty()) << c.design->name;
    for (const auto& f : coil::layOut(*c.design, demos::shop()).fill) {
        EXPECT_LE(f.over, 0);
        EXPECT_TRUE(f.problems.empty());
    }
    const std::string text = exchange::writeDesign(*c.design, demos::shop());
    const auto opened = exchange::readDesign(text, "candidate", demos::shop()).design;
    EXPECT_EQ(exchange::writeDesign(*opened, demos::shop()), text);
    const auto answer = analysis::answer(*opened, demos::shop());
    ASSERT_EQ(answer->promises.size(), c.promises.size());
    for (std::size_t k = 0; k < c.promises.size(); ++k) {
        EXPECT_EQ(answer->promises[k].text, c.promises[k].text);
        EXPECT_EQ(answer->promises[k].standing, c.promises[k].standing) << c.promises[k].text;
        EXPECT_NEAR(answer->promises[k].now, c.promises[k].now, 1e-6 * std::abs(c.promises[k].now) + 1e-9);
    }
}

TEST(SeekSearch, CandidatesValidateLayOutAndKeepWhatTheirFullFiguresSay) {
    const auto need = seek::needOf(*demos::design("ribbon-step-up"), "ribbon");
    const auto list = seek::sought(need, demos::shop(), smallPlan());
    ASSERT_FALSE(list.candidates.empty());
    for (const auto& c : list.candidates) expectSound(c);
    for (std::size_t k = 1; k < list.candidates.size(); ++k)
        EXPECT_GE(list.candidates[k - 1].weakest, list.candidates[k].weakest);
}

TEST(SeekSearch, AnyNumberOfThreadsGivesTheSameList) {
    const auto need = seek::needOf(*demos::design("ribbon-step-up"), "ribbon");
    auto plan = smallPlan();
    plan.threads = 1;
    const auto one = seek::sought(need, demos::shop(), plan);
    plan.threads = 3;
    const auto three = seek::sought(need, demos::shop(), plan);
    ASSERT_EQ(one.candidates.size(), three.candidates.size());
    EXPECT_EQ(one.tried, three.tried);
    for (std::size_t k = 0; k < one.candidates.size(); ++k) {
        EXPECT_EQ(*one.candidates[k].design, *three.candidates[k].design);
        EXPECT_EQ(one.candidates[k].weakest, three.candidates[k].weakest);
    }
}

TEST(SeekSearch, StopsWhenTold) {
    const auto need = seek::needOf(*demos::design("ribbon-step-up"), "ribbon");
    std::stop_source source;
    const auto list = seek::sought(need, demos::shop(), smallPlan(), source.get_token(), [&](std::size_t tried) {
        if (tried == 3) source.request_stop();
    });
    EXPECT_TRUE(list.stopped);
    EXPECT_LT(list.tried, 10U);
}

TEST(SeekSearch, WhatIsHeldStays) {
    const auto given = demos::design("ribbon-step-up");
    const auto need = seek::needOf(*given, "ribbon");
    auto plan = smallPlan();
    plan.held = {given, true, false, true, true, false};
    const auto list = seek::sought(need, demos::shop(), plan);
    ASSERT_FALSE(list.candidates.empty());
    for (const auto& c : list.candidates) {
        EXPECT_EQ(c.design->core, given->core);
        EXPECT_EQ(c.design->bobbin, given->bobbin);
        ASSERT_EQ(c.design->coil.front().order.size(), given->coil.front().order.size());
        for (std::size_t k = 0; k < given->windings.size(); ++k) {
            EXPECT_EQ(c.design->windings[k].wire, given->windings[k].wire);
            EXPECT_EQ(c.design->windings[k].strands, given->windings[k].strands);
        }
        expectSound(c);
    }
    plan.held = {given, false, true, false, false, false};
    for (const auto& c : seek::sought(need, demos::shop(), plan).candidates)
        for (std::size_t k = 0; k < given->windings.size(); ++k)
            EXPECT_EQ(design::conductorTurns(*c.design, c.design->windings[k]),
                      design::conductorTurns(*given, given->windings[k]));
}

// The least turns by the closed form: with them, and a core whose inductance does not change with frequency, the level
// is the asked one by the first-order high-pass H = 1 / sqrt(1 + (R / w L)^2) of any text on filters.
TEST(SeekCore, LeastTurnsAreThoseOfAHighPass) {
    magnetics::CoreModel core;
    core.area = 1e-4;
    core.pathLength = 0.1;
    magnetics::StackBlock block;
    block.thickness = 1e-6;  // no eddy currents to speak of
    block.initialPermeability = 1000;
    block.resistivity = 5e-7;
    core.blocks = {block};
    seek::Terminations at;
    at.source = 150;
    at.load = 1 / 600.0;
    constexpr double pi = 3.14159265358979;
    const double lambda = 4e-7 * pi * 1000 * 1e-4 / 0.1, resistance = 1 / (1 / 150.0 + 1 / 600.0);
    const double turns = seek::turnsForLevel(core, at, 20, std::sqrt(0.5));
    const double reactance = 2 * pi * 20 * lambda * turns * turns;
    const double at1k = 1 / std::sqrt(1 + std::pow(resistance / (50 * reactance), 2));
    EXPECT_NEAR(1 / std::sqrt(1 + std::pow(resistance / reactance, 2)) / at1k, std::sqrt(0.5), 1e-4);
}

/// At least one candidate keeps all and is no worse in cost and size than the demo itself.
void expectAsGood(const std::string& demo, const shop::Prices* prices) {
    const auto given = demos::design(demo);
    const auto own = seek::burdenOf(*given, demos::shop(), prices);
    seek::Plan plan;
    plan.prices = prices;
    const auto from = std::chrono::steady_clock::now();
    const auto list = seek::sought(seek::needOf(*given, demo), demos::shop(), plan);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - from;
    bool asGood = false;
    double cheapest = 1e9;
    for (const auto& c : list.candidates) {
        expectSound(c);
        cheapest = std::min(cheapest, c.burden.cost);
        asGood = asGood || (c.weakest >= 0 && c.burden.cost <= own.cost && c.burden.volume() <= own.volume());
    }
    std::cout << demo << ": " << took.count() << " s, " << list.tried << " computed, cost " << cheapest << " against "
              << own.cost << '\n';
    EXPECT_TRUE(list.kept) << demo;
    EXPECT_TRUE(asGood) << demo;
}

TEST(SeekSearch, FindsAsGoodAsTheRibbonDemoFromItsBrief) {
    expectAsGood("ribbon-step-up", &demos::prices());
}

TEST(SeekSearch, FindsAsGoodAsEveryDemoFromItsBrief) {
    if (std::getenv("COILWRIGHT_FULL") == nullptr) GTEST_SKIP() << "in the target full";
    for (const char* demo : {"microphone-input", "direct-box", "ribbon-step-up", "line-unit", "splitter"})
        for (const shop::Prices* prices : {&demos::prices(), static_cast<const shop::Prices*>(nullptr)})
            expectAsGood(demo, prices);
}

}  // namespace search_test
