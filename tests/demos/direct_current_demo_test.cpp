// SPDX-License-Identifier: GPL-3.0-or-later
// Direct current and the criterion of the maximum level in demo designs.
#include <gtest/gtest.h>

#include <cmath>

#include "analysis/direct_current.h"
#include "analysis/headroom.h"
#include "demo_designs.h"

namespace direct_current_demo_test {

design::Design microphone() {
    return *demos::open("microphone-input").design;
}

double figure(const analysis::Answer& answer, const char* name) {
    const auto* found = answer.figure(name);
    return found ? found->value : std::nan("");
}

analysis::AnswerPtr answered(const design::Design& design) {
    analysis::Question question;
    question.everyHookUp = false;
    return analysis::answer(design, demos::shop(), {}, {}, question);
}

TEST(PhantomDemo, FiguresAreThoseOfTheStandardsFeed) {
    design::Design design = microphone();
    design.conditions.phantom = design::PhantomFeed{};
    design.conditions.phantom->port = "microphone";
    const auto answer = answered(design);
    const double dcr = figure(*answer, "dcr.P");
    EXPECT_NEAR(figure(*answer, "phantom_current") / (0.004 * 6810 * 5e-3 / (2 * 6810 + dcr)), 1, 1e-3);
    EXPECT_NEAR(figure(*answer, "phantom_short_current") / (48 / (6810 * 0.998 + dcr)), 1, 1e-3);
    EXPECT_GT(figure(*answer, "remanence_after_short"), 1e-3);
    EXPECT_GT(figure(*answer, "demagnetising_level"), design.brief.operatingLevel);
}

TEST(PhantomDemo, AShortedLegMakesEvenHarmonicsAndASweepWouldClearThem) {
    design::Design design = microphone();
    design.conditions.phantom = design::PhantomFeed{};
    design.conditions.phantom->port = "microphone";
    design.conditions.phantom->mismatch = 0;
    const auto before = answered(design);
    EXPECT_EQ(before->trace("distortion")->curve("h2_dB"), nullptr);
    design.conditions.phantom->afterShort = true;
    const auto after = answered(design);
    ASSERT_NE(after->trace("distortion")->curve("h2_dB"), nullptr);
}

TEST(LevelCriterionDemo, DistortionIsReachedAtTheLevelThatIsStated) {
    design::Design design = microphone();
    design.brief.maximumLevel.distortion = 0.5;
    analysis::Pipeline pipeline(design, demos::shop(), nullptr, {});
    pipeline.layOut();
    pipeline.computeFields();
    const auto solved = pipeline.solve(design.hookUps.front());
    const analysis::LargeSignal large(design, *solved, pipeline.stages(), false);
    const analysis::LevelLimits limits(design, *solved, pipeline.stages(), &large);
    const auto maximum = limits.at(20);
    EXPECT_STREQ(maximum.limit, "distortion");
    const auto linear = large.linear(20);
    // The level of the fundamental at the source is the linear network's.
    const auto state = large.at(linear, analysis::LargeSignal::emfForLevel(linear, maximum.dbu));
    EXPECT_NEAR(state.thd / 0.005, 1, 0.03);
    EXPECT_STREQ(limits.at(5000).limit, "core saturation");
}

TEST(LevelCriterionDemo, LowestRules) {
    design::Design design = microphone();
    const double knee = figure(*answered(design), "maximum_level_20Hz");
    design.brief.maximumLevel.sourceLevel = knee - 10;
    const auto answer = answered(design);
    EXPECT_NEAR(figure(*answer, "maximum_level_20Hz"), knee - 10, 1e-9);  // the brief counts source EMF
    const auto* trace = answer->trace("headroom");
    const auto& words = trace->curve("limit")->words;
    EXPECT_EQ(words.front(), "core saturation");
    EXPECT_EQ(words.back(), "source");
}

TEST(LevelCriterionDemo, HeatingFallsWithTheCurrentThatIsThereAlready) {
    design::Design design = microphone();
    design.brief.maximumLevel.knee = false;
    design.brief.maximumLevel.rise = 20;
    const double alone = figure(*answered(design), "maximum_level_20Hz");
    design.conditions.directCurrents.push_back({"P", 0.3, nullptr});
    const double with = figure(*answered(design), "maximum_level_20Hz");
    EXPECT_TRUE(std::isfinite(alone));
    EXPECT_LT(with, alone);
}

}  // namespace direct_current_demo_test
