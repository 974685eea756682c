// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>

#include "coil/coil_build.h"
#include "small_transformer.h"

namespace half_turns_test {

std::map<std::string, double> oneSided(const design::Design& d) {
    std::map<std::string, double> sum;
    for (const auto& layer : coil::layOut(d, small::shop()).layers) sum[layer.section] += layer.oneSided;
    return sum;
}

design::Design halves(double first, double second) {
    auto d = small::alone(small::sectionOf("P", "a", first));
    d.coil[0].order.push_back({small::barrier(1e-4)});
    d.coil[0].order.push_back({small::sectionOf("P", "b", second)});
    return d;
}

TEST(HalfTurns, PassOneWindow) {
    const auto sum = oneSided(halves(12.5, 400));
    EXPECT_DOUBLE_EQ(sum.at("a"), 0.5);
    EXPECT_DOUBLE_EQ(sum.at("b"), 0);  // whole turns from the back to the back
}

TEST(HalfTurns, InSeriesMakeAWhole) {
    const auto sum = oneSided(halves(12.5, 400.5));
    EXPECT_DOUBLE_EQ(sum.at("a") + sum.at("b"), 0);
    EXPECT_DOUBLE_EQ(sum.at("b"), -0.5);
}

TEST(HalfTurns, InParallelPassTheSameWindow) {
    auto d = halves(12.5, 12.5);
    d.windings[0].connection = design::Connection::Parallel;
    const auto sum = oneSided(d);
    EXPECT_DOUBLE_EQ(sum.at("a"), 0.5);
    EXPECT_DOUBLE_EQ(sum.at("b"), 0.5);
}

TEST(HalfTurns, AtATapFallBetweenItsTwoPieces) {
    auto d = small::alone(small::sectionOf("P", "a", 25));
    d.windings[0].taps.resize(1);
    d.windings[0].taps[0].turns = 12.5;
    d.windings[0].taps[0].terminal = "3";
    const auto build = coil::layOut(d, small::shop());
    ASSERT_EQ(build.layers.size(), 2U);
    EXPECT_DOUBLE_EQ(build.layers[0].oneSided, 0.5);
    EXPECT_DOUBLE_EQ(build.layers[1].oneSided, -0.5);
}

}  // namespace half_turns_test
