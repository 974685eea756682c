// SPDX-License-Identifier: GPL-3.0-or-later
// The curve between an alloy's points and beyond the last, against a published curve of steel.
//
// Steel of the workshop problem 13 of the TEAM series (T. Nakata, N. Takahashi, K. Fujiwara, 3-D non-linear
// magnetostatic model; table and equations seen in two stored sources that agree): B-H points up to 1.8 T; from there
// to 2.22 T  B = mu0 H + a H^2 + b H + c, a = -2.381e-10, b = 2.327e-5, c = 1.590; above 2.22 T  B = mu0 H + 2.16.
#include <gtest/gtest.h>

#include <cmath>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"
#include "read_resources.h"

namespace magnetization_test {

const std::vector<catalog::BhPoint> steel{
    {0, 0},       {16, 0.0025}, {30, 0.005},  {54, 0.0125}, {93, 0.025},  {143, 0.05}, {191, 0.1},
    {210, 0.2},   {222, 0.3},   {233, 0.4},   {247, 0.5},   {258, 0.6},   {272, 0.7},  {289, 0.8},
    {313, 0.9},   {342, 1.0},   {377, 1.1},   {433, 1.2},   {509, 1.3},   {648, 1.4},  {933, 1.5},
    {1228, 1.55}, {1934, 1.6},  {2913, 1.65}, {4993, 1.7},  {7189, 1.75}, {9423, 1.8}};

magnetics::StackBlock sheets(const std::vector<catalog::BhPoint>& curve) {
    magnetics::StackBlock block;
    block.initialPermeability = 0.0025 / (16 * magnetics::mu0);
    block.saturation = 2.16;
    block.curve = curve;
    return block;
}

TEST(PublishedCurve, ReachesEveryPointFromBothSides) {
    const auto block = sheets(steel);
    for (const auto& point : steel)
        for (const double side : {1 - 1e-9, 1.0, 1 + 1e-9})
            EXPECT_NEAR(magnetics::fluxAtField(block, side * point.field), point.flux, 1e-7) << point.field << " A/m";
}

TEST(PublishedCurve, PointsLeftOutAreFoundAgain) {
    // Every second point is kept; those between are met within the unevenness of the measured points themselves.
    std::vector<catalog::BhPoint> kept;
    for (std::size_t i = 0; i < steel.size(); i += 2) kept.push_back(steel[i]);
    const auto block = sheets(kept);
    for (std::size_t i = 1; i < steel.size(); i += 2) {
        const double found = magnetics::fluxAtField(block, steel[i].field);
        EXPECT_NEAR(found, steel[i].flux, 0.02 + 0.02 * steel[i].flux) << steel[i].field << " A/m";
    }
}

TEST(PublishedCurve, BetweenSparsePointsNearSaturation) {
    // Values of the published parabola between 1.8 and 2.22 T (derived from it): every 6 kA/m a point, checked
    // half-way.
    const auto block = sheets({{0, 0},
                               {1228, 1.55},
                               {9423, 1.79997},
                               {15423, 1.91164},
                               {21423, 2.00616},
                               {27423, 2.08354},
                               {33423, 2.14377}});
    EXPECT_NEAR(magnetics::fluxAtField(block, 18423), 1.96104, 2e-3);
    EXPECT_NEAR(magnetics::fluxAtField(block, 24423), 2.04699, 2e-3);
}

TEST(PublishedCurve, BeyondSaturationOnlyAirAdds) {
    // 2.22 T at 47 746 A/m; 2.2857 T at 100 kA/m, 3.4166 T at 1 MA/m (derived from the published equation).
    auto points = steel;
    points.push_back({47746, 2.22});
    const auto block = sheets(points);
    EXPECT_NEAR(magnetics::fluxAtField(block, 1e5), 2.2857, 1e-4);
    EXPECT_NEAR(magnetics::fluxAtField(block, 1e6), 3.4166, 1e-4);
    EXPECT_NEAR(magnetics::fluxAtField(block, -1e6), -3.4166, 1e-4);
}

TEST(PublishedCurve, CatalogSteelsKeepTheLeastValuesOfTheStandards) {
    // EN 10107, conventional grain-oriented grades: polarization 1.75 T at 800 A/m at least; EN 10106, grades of 0.5
    // mm: 1.47 to 1.56 T at 2500, 1.56 to 1.65 T at 5000, 1.68 to 1.75 T at 10 000 A/m at least (memory, medium).
    const auto polarization = [](const char* key, double field) {
        const auto& alloy = shopCatalog().alloys.at(key);
        magnetics::StackBlock block;
        block.initialPermeability = alloy.initialPermeability;
        block.saturation = alloy.saturation;
        block.curve = alloy.curve;
        return magnetics::fluxAtField(block, field) - magnetics::mu0 * field;
    };
    EXPECT_GE(polarization("silicon-oriented", 800), 1.75);
    EXPECT_GE(polarization("silicon-non-oriented", 2500), 1.47);
    EXPECT_GE(polarization("silicon-non-oriented", 5000), 1.56);
    EXPECT_GE(polarization("silicon-non-oriented", 10000), 1.68);
}

}  // namespace magnetization_test
