// SPDX-License-Identifier: GPL-3.0-or-later
// A design with and without its shields; a box shield.
#include "analysis/shield_cost.h"

#include <gtest/gtest.h>

#include "design/edit.h"
#include "small_figure.h"

namespace shield_cost_test {

design::Shield foil(const char* name, bool overEnds = false) {
    design::Shield shield;
    shield.name = name;
    shield.overEnds = overEnds;
    return shield;
}

/// P, film, foil, film, S with margins, film, foil; both foils earthed. `box`: the outer one is folded over S.
design::Design shielded(bool box) {
    auto d = small::transformer();
    auto primary = small::sectionOf("P", "a", 188), secondary = small::sectionOf("S", "a", 376);
    secondary.marginLow = secondary.marginHigh = 1.5e-3;
    d.coil[0].order = {{primary},   {small::barrier(1e-4)}, {foil("inner")},     {small::barrier(1e-4)},
                       {secondary}, {small::barrier(1e-4)}, {foil("outer", box)}};
    auto& hookUp = d.hookUps.front();
    hookUp.earths = {"4", "core", "inner", "outer"};
    hookUp.ports.front().earthing = design::Earthing::Balanced;
    return d;
}

TEST(ShieldCost, IsThatOfTheDesignWithoutTheShield) {
    const auto d = shielded(false);
    const auto now = analysis::answer(d, small::shop());
    const auto all = analysis::shieldCosts(d, small::shop(), now);
    ASSERT_EQ(all.size(), 4U);
    EXPECT_EQ(all[1].name, "without inner");
    EXPECT_EQ(all[3].name, "without shields");
    const auto bare = design::removeItem(d, {0, 2});
    std::size_t rows = 0;
    for (std::size_t k = 0; k < all[0].figures.size(); ++k) {
        const auto& name = all[0].figures[k]->name;
        ASSERT_NE(all[1].figures[k], nullptr) << name;
        EXPECT_NEAR(all[1].figures[k]->value / small::validFigure(*bare, name.c_str()), 1, 1e-6) << name;
        ++rows;
    }
    EXPECT_GE(rows, 6U);  // leakage, two capacitances, -3 dB, rejection twice and with 10 ohm
    const auto table = analysis::table(all);
    ASSERT_EQ(table.size(), rows + 1);
    for (const auto& row : table) EXPECT_EQ(row.size(), 5U);
}

TEST(ShieldCost, OfNoShieldIsTheDesignAlone) {
    const auto d = small::transformer();
    EXPECT_EQ(analysis::shieldCosts(d, small::shop(), analysis::answer(d, small::shop())).size(), 1U);
}

TEST(BoxShield, HidesTheWindingFromTheCore) {
    EXPECT_GT(small::validFigure(shielded(false), "capacitance.S.core"), 1e-14);
    EXPECT_EQ(analysis::answer(shielded(true), small::shop())->figure("capacitance.S.core"), nullptr);  // none at all
    // Its price: more capacitance to the foil.
    EXPECT_GT(small::validFigure(shielded(true), "capacitance.S.outer"),
              small::validFigure(shielded(false), "capacitance.S.outer") + 1e-13);
}

TEST(BoxShield, SaysWhatIsLeftOut) {
    const auto with = analysis::answer(shielded(true), small::shop())->assumptions,
               without = analysis::answer(shielded(false), small::shop())->assumptions;
    ASSERT_EQ(with.size(), without.size() + 1);
    EXPECT_NE(with.back().find("folded ends of outer"), std::string::npos) << with.back();
}

}  // namespace shield_cost_test
