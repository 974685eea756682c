// SPDX-License-Identifier: GPL-3.0-or-later
// What is shown as wound at a point of a program.
#include "replay/progress.h"

#include <gtest/gtest.h>

#include "winding_cases.h"

namespace progress_test {

struct Shown {
    coil::CoilBuild build;
    replay::Expected expected;
    replay::Run run;
};

Shown shownOf(const design::Design& design, const std::string& winder, int leg) {
    const auto& on = winding_cases::both(winder);
    Shown shown;
    shown.build = coil::layOut(design, winding_cases::shop());
    shown.expected = replay::expected(design, shown.build, winding_cases::shop(), on.machine, leg);
    shown.run = replay::run(replay::readProgram(winding_cases::program(design, on, leg), "program"), on.machine);
    return shown;
}

double turnsOf(const coil::CoilBuild& build, int leg) {
    double turns = 0;
    for (const auto& layer : build.layers)
        if (layer.leg == leg) turns += layer.turns;
    return turns;
}

TEST(Progress, BeginsBareAndEndsWithTheWholeCoil) {
    for (const char* name : winding_cases::demos) {
        const auto design = winding_cases::demo(name);
        for (const char* winder : winding_cases::winders) {
            const Shown shown = shownOf(design, winder, 1);
            const auto bare = replay::woundSoFar(shown.build, shown.expected, {}, 1);
            EXPECT_TRUE(bare.layers.empty() && bare.foils.empty()) << name;
            const auto end = replay::progressAt(shown.run, 1e9);
            const auto whole = replay::woundSoFar(shown.build, shown.expected, end, 1);
            EXPECT_DOUBLE_EQ(turnsOf(whole, 1), turnsOf(shown.build, 1)) << name << winder;
            EXPECT_EQ(whole.foils.size(), std::count_if(shown.build.foils.begin(), shown.build.foils.end(),
                                                        [](const auto& foil) { return foil.leg == 1; }));
        }
    }
}

TEST(Progress, GrowsByTheTurnsOfEachBlockAndNeverShrinks) {
    const auto design = winding_cases::demo("microphone-input");
    const Shown shown = shownOf(design, "single-traverse", 1);
    double before = 0, wound = 0;
    std::size_t sheets = 0;
    for (std::size_t k = 0; k < shown.run.events.size(); ++k) {
        const auto progress = replay::progressBehind(shown.run, k);
        const auto part = replay::woundSoFar(shown.build, shown.expected, progress, 1);
        // Sections that are wound in one hand count the same turns once each.
        wound = 0;
        for (int s = 0; s < progress.step; ++s) {
            const auto& step = shown.expected.steps[static_cast<std::size_t>(s)];
            wound += step.turns * static_cast<double>(step.turns > 0 ? step.items.size() : 0);
        }
        const auto& now = shown.expected.steps[static_cast<std::size_t>(progress.step)];
        wound += progress.turns * static_cast<double>(now.turns > 0 ? now.items.size() : 0);
        EXPECT_NEAR(turnsOf(part, 1), wound, 1e-6) << "block " << k;
        EXPECT_GE(turnsOf(part, 1), before);
        EXPECT_GE(part.dielectrics.size(), sheets) << "block " << k;
        before = turnsOf(part, 1);
        sheets = part.dielectrics.size();
    }
    EXPECT_EQ(sheets, shown.build.dielectrics.size()) << "paper on the outside is the last step";
}

TEST(Progress, APartOfALayerIsAsWideAsItsTurnsAndGrowsFromItsBeginning) {
    const auto design = winding_cases::demo("microphone-input");
    const Shown shown = shownOf(design, "single-traverse", 1);
    const auto first = std::find_if(shown.expected.steps.begin(), shown.expected.steps.end(),
                                    [](const auto& step) { return step.turns > 0; });
    replay::Progress progress;
    progress.step = static_cast<int>(first - shown.expected.steps.begin());
    for (const auto& layer : first->layers) {
        progress.turns = layer.first + layer.turns / 4;
        const auto part = replay::woundSoFar(shown.build, shown.expected, progress, 1);
        const coil::Layer& last = part.layers.back();
        EXPECT_NEAR(last.turns, layer.turns / 4, 1e-9);
        EXPECT_NEAR(last.box.height(), std::abs(layer.end - layer.begin) / 4, 1e-9);
        EXPECT_NEAR(layer.begin < layer.end ? last.box.y0 : last.box.y1, layer.begin, 1e-12);
    }
}

TEST(Progress, BetweenTwoBlocksTurnsGoWithTime) {
    const auto design = winding_cases::demo("line-unit");
    const Shown shown = shownOf(design, "single-traverse", 1);
    for (std::size_t k = 1; k < shown.run.events.size(); ++k) {
        const auto &from = shown.run.events[k - 1], &to = shown.run.events[k];
        if (from.step != to.step || to.turns <= from.turns || to.seconds <= from.seconds) continue;
        const auto half = replay::progressAt(shown.run, (from.seconds + to.seconds) / 2);
        EXPECT_EQ(half.event, k);
        EXPECT_NEAR(half.turns, (from.turns + to.turns) / 2, 1e-6);
        EXPECT_NEAR(half.guide.traverse, (from.guide.traverse + to.guide.traverse) / 2, 1e-9);
    }
    EXPECT_EQ(replay::progressAt(shown.run, -1).event, 0U);
    EXPECT_EQ(replay::progressAt(shown.run, 1e9).event, shown.run.events.size() - 1);
}

}  // namespace progress_test
