// SPDX-License-Identifier: GPL-3.0-or-later
// What can be promised is known without computing it, and in the unit that the computation gives.
#include "analysis/figure_names.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "demo_designs.h"

namespace figure_names_test {

class FigureNames : public testing::TestWithParam<const char*> {};

TEST_P(FigureNames, CoverEveryFigureOfTheAnswerInItsUnit) {
    const auto design = demos::open(GetParam()).design;
    const auto names = analysis::figureNames(*design);
    const auto answer = demos::answerOf(GetParam());
    ASSERT_FALSE(answer->figures.empty());
    for (const auto& figure : answer->figures) {
        const std::string name = figure.name.substr(0, figure.name.find('@'));
        EXPECT_NE(std::find(names.begin(), names.end(), name), names.end()) << name;
        EXPECT_EQ(analysis::kindOfFigure(name), units::kindOfUnit(figure.unit)) << name;
    }
}

TEST_P(FigureNames, CoverEveryPromiseOfTheBrief) {
    const auto design = demos::open(GetParam()).design;
    const auto names = analysis::figureNames(*design);
    for (const auto& promise : design->brief.promises)
        EXPECT_NE(std::find(names.begin(), names.end(), promise.figure), names.end()) << promise.figure;
}

TEST_P(FigureNames, MasksHaveTheUnitOfTheFirstCurve) {
    const auto answer = demos::answerOf(GetParam());
    for (const auto& trace : answer->traces)
        EXPECT_EQ(analysis::kindOfTrace(trace->name), trace->curves.front().kind) << trace->name;
}

TEST(FigureName, WithoutAKnownQuantityIsAPureNumber) {
    EXPECT_EQ(analysis::kindOfFigure("colour.P"), units::Kind::Number);
    EXPECT_EQ(analysis::kindOfTrace("colour"), units::Kind::Number);
}

INSTANTIATE_TEST_SUITE_P(Demos, FigureNames, testing::ValuesIn(demos::all), [](const auto& one) {
    std::string name = one.param;
    std::erase(name, '-');
    return name;
});

}  // namespace figure_names_test
