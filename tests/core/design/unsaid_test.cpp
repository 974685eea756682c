// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/unsaid.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace unsaid_test {

std::string saidOn(const design::Design& d, const std::string& subject) {
    for (const auto& point : design::points(d))
        if (point.subject == subject) return point.said;
    ADD_FAILURE() << "no point " << subject;
    return {};
}

TEST(Unsaid, AnEmptyBriefLeavesEverythingOpen) {
    const design::Design d;
    EXPECT_EQ(design::unsaid(d).size(), design::points(d).size());
}

TEST(Unsaid, WhatTheDesignShowsNeedsNoAsking) {
    design::Design d;
    design::PortUse source, load;
    source.role = design::Role::Drive;
    source.earthing = design::Earthing::Balanced;
    source.through.emplace();
    source.through->resistance = 150;
    load.role = design::Role::Observe;
    load.through.emplace();
    load.through->resistance = 10e3;
    load.across.emplace_back();
    load.across.back().capacitance = 1e-9;
    d.hookUps.emplace_back();
    d.hookUps.front().ports = {source, load};
    d.brief.isolation = "1.5 kV for a minute";
    d.brief.size.height = 0.03;
    d.brief.promises.push_back({"low_3dB", "", "", {}, 12.0, "", nullptr});
    EXPECT_EQ(saidOn(d, "source"), "150 \u03A9");
    EXPECT_EQ(saidOn(d, "source earthing"), "balanced");
    EXPECT_NE(saidOn(d, "load").find("beside"), std::string::npos);
    EXPECT_EQ(saidOn(d, "load earthing"), "") << "floating is what stands there before anybody chose";
    EXPECT_EQ(saidOn(d, "isolation"), "1.5 kV for a minute");
    EXPECT_NE(saidOn(d, "size").find("free"), std::string::npos);
    EXPECT_EQ(saidOn(d, "low end"), "promised: low_3dB");
    EXPECT_EQ(saidOn(d, "high end"), "");
}

TEST(Unsaid, WhatTheCustomerSaidRules) {
    design::Design d;
    d.brief.isolation = "none";
    d.brief.said = {{"isolation", "ask again in May", nullptr}, {"climate", "", nullptr}};
    EXPECT_EQ(saidOn(d, "isolation"), "ask again in May");
    EXPECT_EQ(saidOn(d, "climate"), "") << "a subject without words is still open";
}

TEST(Unsaid, SubjectsAreUnique) {
    auto all = design::points(design::Design{});
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.subject < b.subject; });
    EXPECT_EQ(
        std::adjacent_find(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.subject == b.subject; }),
        all.end());
}

}  // namespace unsaid_test
