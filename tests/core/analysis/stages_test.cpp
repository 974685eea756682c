// SPDX-License-Identifier: GPL-3.0-or-later
// Which stages run again after which edit, and that what is taken over is what would have been computed.
#include "analysis/stages.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "design/edit.h"
#include "small_transformer.h"

namespace stages_test {

using analysis::Stage;
using Stages = std::vector<Stage>;

const catalog::Catalog& shop() {
    static const catalog::Catalog one = small::shop();
    return one;
}

/// The stages that run when `before` has been answered and `change` was made.
template <class Change>
Stages ranAfter(const design::Design& before, Change change) {
    const auto first = analysis::answer(before, shop());
    const auto edited = design::changed(before, change);
    const auto second = analysis::answer(*edited, shop(), first);
    // Nothing stale: the same from nothing.
    const auto fresh = analysis::answer(*edited, shop());
    EXPECT_EQ(second->figures.size(), fresh->figures.size());
    for (std::size_t k = 0; k < std::min(second->figures.size(), fresh->figures.size()); ++k) {
        const auto &a = second->figures[k], &b = fresh->figures[k];
        EXPECT_EQ(a.name, b.name);
        EXPECT_TRUE(a.value == b.value || (std::isnan(a.value) && std::isnan(b.value))) << a.name;
    }
    EXPECT_EQ(second->trace("response")->curves[0].y, fresh->trace("response")->curves[0].y);
    EXPECT_EQ(second->trace("headroom")->curves[0].y, fresh->trace("headroom")->curves[0].y);
    return second->ran;
}

TEST(Stages, FirstAnswerRunsAll) {
    const auto first = analysis::answer(small::transformer(), shop());
    EXPECT_EQ(first->ran, (Stages{Stage::Build, Stage::Leakage, Stage::Capacitance, Stage::Proximity, Stage::Core,
                                  Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
}

TEST(Stages, SameDesignRunsOnlyTraces) {
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design&) {}), (Stages{Stage::Traces}));
}

TEST(Stages, NoteAndBriefRunOnlyTraces) {
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.note = "a note"; }), (Stages{Stage::Traces}));
    EXPECT_EQ(ranAfter(small::transformer(),
                       [](design::Design& d) {
                           d.brief.operatingLevel = 4;
                           d.brief.levelAt = design::LevelAt::Output;
                       }),
              (Stages{Stage::Traces}));
}

TEST(Stages, PermittivityRunsCapacitanceButNotLeakage) {
    auto before = small::transformer();
    before.parts = small::shop();
    EXPECT_EQ(ranAfter(before, [](design::Design& d) { d.parts.insulation["film"].permittivity = 4; }),
              (Stages{Stage::Build, Stage::Capacitance, Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
}

TEST(Stages, ThicknessOfABarrierRunsAllOfTheCoilButNotTheCore) {
    EXPECT_EQ(ranAfter(small::transformer(),
                       [](design::Design& d) { d.coil[0].order[1].barrier()->ply.thickness.value = 2e-4; }),
              (Stages{Stage::Build, Stage::Leakage, Stage::Capacitance, Stage::Proximity, Stage::Pieces, Stage::Figures,
                      Stage::Solve, Stage::Traces}));
}

TEST(Stages, AlloyRunsCoreAndSolve) {
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.core.stack[0].alloy = "better alloy"; }),
              (Stages{Stage::Core, Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.core.gap.value = 2e-5; }),
              (Stages{Stage::Core, Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
}

TEST(Stages, TemperatureRunsNoField) {
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.conditions.temperature.value = 60; }),
              (Stages{Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
}

TEST(Stages, DirectCurrentRunsOnlyTraces) {
    EXPECT_EQ(ranAfter(small::transformer(),
                       [](design::Design& d) {
                           d.conditions.directCurrents = {{"P", 1e-3, {}}};
                       }),
              (Stages{Stage::Traces}));
}

TEST(Stages, AssumptionsRunWhatTheySay) {
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.assumptions.ends = design::Ends::Walled; }),
              (Stages{Stage::Leakage, Stage::Proximity, Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.assumptions.dielectricLoss = false; }),
              (Stages{Stage::Capacitance, Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
    EXPECT_EQ(ranAfter(small::transformer(), [](design::Design& d) { d.assumptions.proximity = false; }),
              (Stages{Stage::Pieces, Stage::Figures, Stage::Solve, Stage::Traces}));
}

TEST(Stages, AnotherLoadSolvesOnlyItsHookUp) {
    auto before = small::transformer();
    before.hookUps.push_back(small::normal());
    before.hookUps[1].name = "bridged";
    const auto ran = ranAfter(before, [](design::Design& d) { d.hookUps[1].ports[1].through->resistance.value = 5e4; });
    EXPECT_EQ(ran, (Stages{Stage::Pieces, Stage::Solve, Stage::Traces}));
}

/// The layers may be cut elsewhere for the other hot end; what was computed of the coil stays.
TEST(Stages, SwappedEndsKeepTheFields) {
    const auto before = small::transformer();
    const auto first = analysis::answer(before, shop());
    const auto second = analysis::answer(*design::swapEnds(before, "S"), shop(), first);
    EXPECT_TRUE(second->stages->coarse == first->stages->coarse);
    EXPECT_EQ(second->stages->capacitance, first->stages->capacitance);
    EXPECT_EQ(std::count(second->ran.begin(), second->ran.end(), Stage::Proximity), 0);
    EXPECT_EQ(std::count(second->ran.begin(), second->ran.end(), Stage::Capacitance), 0);
    EXPECT_EQ(std::count(second->ran.begin(), second->ran.end(), Stage::Solve), 1);
}

/// Quick answers show an edit's own curves at once; what they carry over is named, and the full one has none of it.
TEST(Answer, QuickCarriesOnlyWhatWaits) {
    auto before = small::transformer();
    before.hookUps.push_back(small::normal());
    before.hookUps[1].name = "bridged";
    before.hookUps[1].ports[1].through->resistance.value = 5e4;
    const auto first = analysis::answer(before, shop());
    EXPECT_FALSE(first->carried);
    const auto edited = design::changed(before, [](design::Design& d) { d.core.gap.value = 2e-5; });
    analysis::Question quick;
    quick.quick = true;
    const auto early = analysis::answer(*edited, shop(), first, {}, quick);
    EXPECT_TRUE(early->carried);
    const auto full = analysis::answer(*edited, shop(), early);
    const auto fresh = analysis::answer(*edited, shop());
    EXPECT_FALSE(full->carried);
    EXPECT_EQ(early->figure("inductance_10Hz.P")->value, fresh->figure("inductance_10Hz.P")->value);
    EXPECT_EQ(early->trace("response")->curves[0].y, fresh->trace("response")->curves[0].y);
    EXPECT_EQ(early->figure("low_3dB@bridged")->value, first->figure("low_3dB@bridged")->value);
    ASSERT_EQ(full->figures.size(), fresh->figures.size());
    for (std::size_t k = 0; k < full->figures.size(); ++k)
        EXPECT_TRUE(full->figures[k].value == fresh->figures[k].value ||
                    (std::isnan(full->figures[k].value) && std::isnan(fresh->figures[k].value)))
            << full->figures[k].name;
    // Nothing to wait for: nothing carried.
    EXPECT_FALSE(analysis::answer(*edited, shop(), full, {}, quick)->figures.empty());
}

TEST(Answer, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    const auto stopped = analysis::answer(small::transformer(), shop(), {}, source.get_token());
    EXPECT_TRUE(stopped->stopped);
    EXPECT_TRUE(stopped->figures.empty());
    EXPECT_TRUE(stopped->traces.empty());
    // A stopped answer is no harm as the previous one.
    const auto after = analysis::answer(small::transformer(), shop(), stopped);
    EXPECT_FALSE(after->stopped);
    EXPECT_FALSE(after->figures.empty());
}

TEST(Answer, FiguresOfOtherHookUpsCarryTheirName) {
    auto d = small::transformer();
    d.hookUps.push_back(small::normal());
    d.hookUps[1].name = "bridged";
    d.hookUps[1].ports[1].through->resistance.value = 1e6;
    auto all = analysis::answer(d, shop());
    ASSERT_NE(all->figure("gain_1kHz"), nullptr);
    ASSERT_NE(all->figure("gain_1kHz@bridged"), nullptr);
    EXPECT_GT(all->figure("gain_1kHz@bridged")->value, all->figure("gain_1kHz")->value);
    analysis::Question question;
    question.hookUp = "bridged";
    const auto other = analysis::answer(d, shop(), all, {}, question);
    EXPECT_EQ(other->figure("gain_1kHz")->value, all->figure("gain_1kHz@bridged")->value);
    EXPECT_EQ(other->trace("response")->hookUp, "bridged");
    question.everyHookUp = false;
    EXPECT_EQ(analysis::answer(d, shop(), all, {}, question)->figure("gain_1kHz@normal"), nullptr);
}

TEST(Answer, AskedFrequenciesAreAnsweredThere) {
    analysis::Question question;
    question.frequencies = {20, 1000, 20000};
    const auto at = analysis::answer(small::transformer(), shop(), {}, {}, question);
    EXPECT_EQ(at->trace("response")->frequency, question.frequencies);
    EXPECT_NEAR(at->trace("response")->curves[0].y[1], at->figure("gain_1kHz")->value, 1e-9);
}

TEST(Grid, SixHundredPointsWithBothEnds) {
    const auto grid = analysis::logarithmicGrid(0.1, 1e6, 600);
    ASSERT_EQ(grid.size(), 600U);
    EXPECT_DOUBLE_EQ(grid.front(), 0.1);
    EXPECT_DOUBLE_EQ(grid.back(), 1e6);
    for (std::size_t k = 1; k < grid.size(); ++k) EXPECT_NEAR(grid[k] / grid[k - 1], std::pow(1e7, 1.0 / 599), 1e-9);
}

}  // namespace stages_test
