// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "demos.h"

namespace order_test {

std::set<std::string> ordersIn(const std::string& demo) {
    const auto need = seek::needOf(*demos::design(demo), demo);
    std::set<std::string> words;
    for (const auto& order : seek::ordersOf(need)) words.insert(seek::orderWords(order, need));
    return words;
}

TEST(SeekOrder, HoldsTheArrangementOfEachDemo) {
    EXPECT_TRUE(ordersIn("microphone-input").contains("P | foil | S | foil | P"));
    EXPECT_TRUE(ordersIn("direct-box").contains("P | foil | foil | S | P"));
    EXPECT_TRUE(ordersIn("ribbon-step-up").contains("S | foil | P | S"));
    EXPECT_TRUE(ordersIn("line-unit").contains("A | foil | C | D | foil | B"));
    EXPECT_TRUE(ordersIn("splitter").contains("S1 | foil | P | foil | S2 | P | foil | S3"));
}

TEST(SeekOrder, NoSectionLiesBesideItsOwnWindingAndEveryShieldHasAGap) {
    for (const char* demo : {"microphone-input", "direct-box", "ribbon-step-up", "line-unit", "splitter"}) {
        const auto need = seek::needOf(*demos::design(demo), demo);
        const auto orders = seek::ordersOf(need);
        EXPECT_FALSE(orders.empty()) << demo;
        for (const auto& order : orders) {
            EXPECT_EQ(std::adjacent_find(order.sections.begin(), order.sections.end()), order.sections.end());
            EXPECT_EQ(order.shields.size(), order.sections.size());
            EXPECT_TRUE(order.shields.front().empty());
            for (std::size_t k = 1; k < order.sections.size(); ++k)
                if (!order.shields[k].empty()) {
                    EXPECT_NE(need.windings[order.sections[k]].side, need.windings[order.sections[k - 1]].side);
                }
            for (std::size_t w = 0; w < need.windings.size(); ++w) EXPECT_GE(order.sectionsOf(w), 1);
        }
    }
}

TEST(SeekNeed, SaysNothingOfHowTheDesignIsBuilt) {
    const auto given = demos::design("microphone-input");
    const auto need = seek::needOf(*given, "file");
    EXPECT_TRUE(need.frame.coil.empty());
    EXPECT_TRUE(need.frame.windings.empty());
    EXPECT_TRUE(need.frame.core.stack.empty());
    EXPECT_TRUE(need.frame.core.sheet.empty());
    EXPECT_EQ(need.windings[1].ratio, 7);
    EXPECT_TRUE(need.windings[1].winding.wire.empty());
    // Another arrangement of the same asks the same.
    design::Design other = *given;
    other.core.sheet = "EI66";
    other.bobbin = "EI66-1";
    for (auto& item : other.coil.front().order)
        if (auto* s = item.section()) s->turns = s->turns * 2;
    std::reverse(other.coil.front().order.begin(), other.coil.front().order.end());
    const auto same = seek::needOf(other, "file");
    EXPECT_EQ(same.frame, need.frame);
    ASSERT_EQ(same.shields.size(), need.shields.size());
    for (std::size_t k = 0; k < same.shields.size(); ++k) EXPECT_EQ(same.shields[k].name, need.shields[k].name);
    for (std::size_t k = 0; k < same.windings.size(); ++k) {
        EXPECT_EQ(same.windings[k].ratio, need.windings[k].ratio);
        EXPECT_EQ(same.windings[k].side, need.windings[k].side);
        EXPECT_EQ(same.windings[k].winding, need.windings[k].winding);
    }
}

TEST(SeekNeed, CountsTurnsOfAPortOverStraps) {
    const auto need = seek::needOf(*demos::design("line-unit"), "file");
    EXPECT_EQ(seek::portRatio(need, need.frame.hookUps[0], "in"), 2);
    EXPECT_EQ(seek::portRatio(need, need.frame.hookUps[2], "in"), 1);
    EXPECT_EQ(need.sides, 2);
}

TEST(SeekNeed, RefusesWhatCannotBeSought) {
    design::Design d = *demos::design("microphone-input");
    d.windings.front().connection = design::Connection::Parallel;
    try {
        (void)seek::needOf(d, "m.coilwright");
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(bad.faults.front().place, "m.coilwright: /windings");
        EXPECT_EQ(bad.faults.front().found, "winding P with its sections in parallel");
        EXPECT_EQ(bad.faults.front().allowed, "sections in series");
    }
}

}  // namespace order_test
