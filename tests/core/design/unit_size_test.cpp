// SPDX-License-Identifier: GPL-3.0-or-later
// How large a unit is, and whether a brief has room for it either way round.
#include "design/unit_size.h"

#include <gtest/gtest.h>

#include <cmath>

namespace design {
namespace unit_size_test {

// Scrapless EI 30, tongue a = 10 mm: 30 mm x 25 mm, window 5 mm deep (pattern of IEC 60740-1 YEI 1; tongue from
// memory).
catalog::Catalog shop() {
    constexpr double a = 0.010;
    catalog::Sheet sheet;
    sheet.tongue = a;
    sheet.outerLeg = sheet.yoke = sheet.windowWidth = a / 2;
    sheet.windowHeight = 3 * a / 2;
    catalog::Catalog all;
    all.sheets["EI30"] = sheet;
    catalog::Fitting can, bolt;
    can.form = catalog::FittingForm::Can;
    can.width = 0.033;
    can.length = 0.028;
    can.height = 0.024;
    bolt.form = catalog::FittingForm::Bolt;
    bolt.width = bolt.length = bolt.height = 0.05;
    all.fittings = {{"can", can}, {"bolt", bolt}};
    return all;
}

Design small() {
    Design d;
    d.core.sheet = "EI30";
    d.core.height = 0.012;
    return d;
}

TEST(UnitSize, OfAScraplessSheetFollowsItsTongue) {
    const auto size = unitSize(small(), shop());
    EXPECT_NEAR(size.x, 0.030, 1e-9);
    EXPECT_NEAR(size.y, 0.025, 1e-9);
    EXPECT_NEAR(size.z, 0.022, 1e-9);
}

TEST(UnitSize, OfTwoCoilsHasOneOnEachSide) {
    Design d = small();
    d.core.kind = CoreKind::TwoLeg;
    const auto size = unitSize(d, shop()), shell = unitSize(small(), shop());
    EXPECT_NEAR(size.x - shell.x, 0.005, 1e-9);
    EXPECT_NEAR(shell.z - size.z, 0.005, 1e-9);  // they share a window: each is half as deep
}

TEST(UnitSize, GrowsByACanAndNotByABolt) {
    Design d = small();
    const auto bare = unitSize(d, shop());
    d.fittings = {{"bolt", 4, true, nullptr}};
    EXPECT_EQ(unitSize(d, shop()), bare);
    d.fittings.push_back({"can", 1, false, nullptr});
    EXPECT_EQ(unitSize(d, shop()), (UnitSize{0.033, 0.028, 0.024}));
}

TEST(UnitSize, LiesEitherWayRound) {
    const auto is = footprint(UnitSize{0.040, 0.048, 0.03});
    EXPECT_EQ(is, (Footprint{0.048, 0.040, 0.03}));
    const auto room = [](double length, double width, double height) {
        Size size;
        size.length = length;
        size.width = width;
        size.height = height;
        return footprint(size);
    };
    EXPECT_EQ(room(0.04, 0.05, 0.03), room(0.05, 0.04, 0.03));
    EXPECT_TRUE(std::isinf(room(0, 0.05, 0.03).length));  // one side free: it may be the longer one
    EXPECT_EQ(room(0, 0.05, 0.03).width, 0.05);
    EXPECT_TRUE(std::isinf(room(0.05, 0.05, 0).height));
}

}  // namespace unit_size_test
}  // namespace design
