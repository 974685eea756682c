// SPDX-License-Identifier: GPL-3.0-or-later
// Which part governs a figure, against powers that simple formulas give.
#include "analysis/lever.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "small_transformer.h"

namespace lever_test {

const catalog::Catalog& shop() {
    static const catalog::Catalog one = small::shop();
    return one;
}

/// For one per cent more of a quantity, per cent that the figure moves: the exponent of a power law.
double exponentOf(const std::string& figure, const std::string& lever) {
    const auto d = small::transformer();
    const auto all = analysis::pulls(d, shop(), analysis::answer(d, shop()), figure);
    for (const auto& pull : all)
        if (pull.lever.words == lever) return 100 * pull.share;
    return std::nan("");
}

TEST(Lever, EveryQuantityOfTheDesignIsFoundOnce) {
    std::vector<std::string> words;
    for (const auto& lever : analysis::levers(small::transformer(), shop())) words.push_back(lever.words);
    EXPECT_EQ(words, (std::vector<std::string>{"turns of P.a", "insulation 2", "turns of S.a", "wire of P", "wire of S",
                                               "stack height", "permeability of the alloy"}));
}

/// R = rho l / A: length follows the turns, area the square of the diameter (of which a little is lost to the mean
/// turn).
TEST(Lever, ResistanceFollowsTurnsAndTheSquareOfTheWire) {
    EXPECT_NEAR(exponentOf("dcr.P", "turns of P.a"), 1.0, 0.01);
    EXPECT_NEAR(exponentOf("dcr.P", "wire of P"), -2.0, 0.02);
    EXPECT_TRUE(std::isnan(exponentOf("dcr.P", "turns of S.a")));
}

/// L = mu N^2 A / l.
TEST(Lever, InductanceFollowsTheSquareOfTurnsTheStackAndThePermeability) {
    EXPECT_NEAR(exponentOf("inductance_10Hz.S", "turns of S.a"), 2.0, 0.01);
    EXPECT_NEAR(exponentOf("inductance_10Hz.S", "stack height"), 1.0, 0.01);
    EXPECT_NEAR(exponentOf("inductance_10Hz.S", "permeability of the alloy"), 1.0, 0.01);
}

/// Far below the low end the response falls with w L / R: 6 dB an octave, and as L does for one per cent more.
TEST(Lever, ASpotOfTheResponseFollowsTheInductanceBelowTheLowEnd) {
    const auto d = small::transformer();
    const auto now = analysis::answer(d, shop());
    const auto all = analysis::pulls(d, shop(), now, analysis::Spot{"response", 0.1});
    ASSERT_FALSE(all.empty());
    for (const auto& pull : all) {
        if (pull.lever.words != "permeability of the alloy") continue;
        EXPECT_NEAR(pull.share, 20 * std::log10(1.01), 0.003);
    }
    EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                            [](const auto& p) { return p.lever.words == "permeability of the alloy"; }));
    EXPECT_TRUE(analysis::pulls(d, shop(), now, analysis::Spot{"no such trace", 100}).empty());
}

TEST(Lever, TheStrongestComesFirstAndIsSaidInOneSentence) {
    const auto d = small::transformer();
    const auto now = analysis::answer(d, shop());
    const auto all = analysis::pulls(d, shop(), now, "dcr.P");
    ASSERT_GE(all.size(), 2U);
    EXPECT_EQ(all[0].lever.words, "wire of P");
    EXPECT_EQ(all[0].lever.winding, "P");
    EXPECT_EQ(all[1].lever.item, (design::ItemIndex{0, 0}));
    for (std::size_t k = 1; k < all.size(); ++k) EXPECT_GE(std::abs(all[k - 1].share), std::abs(all[k].share));
    const std::string words = analysis::sentence(all, units::Kind::Resistance, 2);
    EXPECT_EQ(words, "moved most by wire of P (1 % more: −2.0 %), turns of P.a (+1.0 %)");
    EXPECT_EQ(analysis::sentence({}, units::Kind::Resistance), "no quantity of the design moves it");
}

TEST(Lever, AFigureOfNothingHasNoneAndAStopEndsTheSearch) {
    const auto d = small::transformer();
    const auto now = analysis::answer(d, shop());
    EXPECT_TRUE(analysis::pulls(d, shop(), now, "no such figure").empty());
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(analysis::pulls(d, shop(), now, "dcr.P", stop.get_token()).empty());
}

}  // namespace lever_test
