// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/transfer.h"

#include <gtest/gtest.h>

#include "design/difference.h"
#include "design/edit.h"
#include "sample_design.h"

namespace design {
namespace transfer_test {

using Portions = std::vector<Portion>;

TEST(Transfer, EqualDesignsOfferNothing) {
    EXPECT_EQ(differingPortions(sampleDesign(), sampleDesign()), Portions{});
}

TEST(Transfer, AnEditOfASectionIsOfferedAloneAndWithTheCoil) {
    const Design a = sampleDesign();
    const DesignPtr b = changed(a, [](Design& d) {
        d.coil[0].order[0].section()->turns = 130;
        d.core.height = 0.012;
    });
    EXPECT_EQ(differingPortions(a, *b), (Portions{{Share::Core, ""}, {Share::Section, "P.a"}, {Share::Coil, ""}}));
    const DesignPtr turns = withPortion(a, *b, {Share::Section, "P.a"});
    EXPECT_EQ(differences(a, *turns), std::vector<std::string>{"P.a turns: 60 → 130"});
    const DesignPtr core = withPortion(a, *b, {Share::Core, ""});
    EXPECT_EQ(differences(a, *core), std::vector<std::string>{"core stack height: 10 mm → 12 mm"});
}

TEST(Transfer, TakingEveryPortionMakesTheOther) {
    const Design a = sampleDesign();
    const DesignPtr b = changed(a, [](Design& d) {
        d.coil = moveItem(d, {0, 4}, {0, 2})->coil;
        d.brief.use = "another use";
        d.conditions.temperature = 40;
        d.windings.front().strands = 2;
        d.windings.back().resistanceFactor = 1.1;
        d.assumptions.ends = Ends::Walled;
        d.hookUps.front().note = "another note";
        d.ports.front().name = "another name";
        d.fittings.push_back({"frame", 2, false, nullptr});
        d.sundries.lead = "lead";
    });
    DesignPtr now = changed(a, [](Design&) {});
    const Portions portions = differingPortions(a, *b);
    EXPECT_GE(portions.size(), 8U);
    for (const Portion& portion : portions) now = withPortion(*now, *b, portion);
    EXPECT_EQ(*now, *b);
    EXPECT_EQ(differingPortions(*now, *b), Portions{});
}

TEST(Transfer, WhatTheOtherHasNotIsTakenAwayAndWhatItHasMoreIsAdded) {
    const Design a = sampleDesign();
    const DesignPtr b = changed(a, [](Design& d) {
        HookUp more = d.hookUps.front();
        more.name = "one more";
        d.hookUps.push_back(more);
    });
    const Portion portion{Share::HookUp, "one more"};
    EXPECT_EQ(differingPortions(a, *b), Portions{portion});
    EXPECT_EQ(withPortion(a, *b, portion)->hookUps, b->hookUps);
    EXPECT_EQ(withPortion(*b, a, portion)->hookUps, a.hookUps);
}

TEST(Transfer, CopiesOfCatalogEntriesComeAlongButRuleOnRequestAlone) {
    Design a = sampleDesign();
    Design b = a;
    catalog::Insulation film, paper;
    film.title = "film of the one";
    paper.title = "paper";
    a.parts.insulation["film"] = film;
    film.title = "film of the other";
    b.parts.insulation = {{"film", film}, {"paper", paper}};
    b.core.height = 0.02;
    EXPECT_EQ(differingPortions(a, b), (Portions{{Share::Core, ""}, {Share::Copies, ""}}));
    const DesignPtr core = withPortion(a, b, {Share::Core, ""});
    EXPECT_EQ(core->parts.insulation.at("film").title, "film of the one");
    EXPECT_EQ(core->parts.insulation.count("paper"), 1U);
    EXPECT_EQ(withPortion(a, b, {Share::Copies, ""})->parts.insulation, b.parts.insulation);
}

}  // namespace transfer_test
}  // namespace design
