// SPDX-License-Identifier: GPL-3.0-or-later
// Turn lengths, winding resistance and turns per layer against worked values.
//
// Sources, by row:
//   G-M1..3  MLT = 2 (a + 2 J) + 2 (b + 2 J) + pi h, rectangle with quarter arcs; McLyman prints the same form
//   (memory);
//            values computed outside this program (derived)
//   G-R1     rho N MLT / A with IEC 60028 copper (derived); nominal of IEC 60317 for the same wire (derived)
//   G-T1     floor and ceiling (derived)
#include <gtest/gtest.h>

#include <cmath>

#include "coil/coil_build.h"
#include "coil/mean_turn.h"
#include "coil/winding_steps.h"
#include "coil/wire_resistance.h"
#include "small_transformer.h"

namespace geometry_test {

constexpr double mm = 1e-3;

/// The mean turn of a winding of height h on a wall J is the turn at J + h/2.
double meanTurn(double a, double b, double wall, double height) {
    return coil::turnLength(a * mm, b * mm, wall * mm, 0, (wall + height / 2) * mm) / mm;
}

TEST(PublishedGeometry, MeanTurn) {
    EXPECT_NEAR(meanTurn(16, 16, 1.0, 5.0), 87.70796, 1e-5);        // G-M1 derived
    EXPECT_NEAR(meanTurn(20, 20, 1.0, 8.0), 113.13274, 1e-5);       // G-M2 derived
    EXPECT_NEAR(meanTurn(15.88, 15.88, 1.0, 6.5), 91.94035, 1e-5);  // G-M3 derived
}

TEST(PublishedGeometry, MeanTurnOfALaidOutCoilIsTheMeanOfItsLayers) {  // G-M1 again, wound: derived
    auto d = small::alone(small::sectionOf("P", "a", 40.0 * 188));
    d.coil[0].order[0].section()->layerFactor = 5.0 * mm / (40 * small::overall);
    const auto build = coil::layOut(d, small::shop());
    ASSERT_EQ(build.layers.size(), 40U);
    EXPECT_NEAR(build.fill[0].build / mm, 5.0, 1e-9);
    double sum = 0;
    for (const auto& layer : build.layers) sum += layer.turnLength;
    EXPECT_NEAR(sum / 40 / mm, 87.70796, 1e-5);
}

TEST(PublishedGeometry, WindingResistance) {
    const double found = coil::wireResistance(1000 * 87.708 * mm, 0.1 * mm, 20);
    EXPECT_NEAR(found, 192.5358, 1e-5 * 192.5358);  // G-R1 derived
    EXPECT_NEAR(found, 190.8944, 0.01 * 190.8944);  // the nominal of IEC 60317 uses 58.5 m/(ohm mm2): within 1 %
}

TEST(PublishedGeometry, TurnsPerLayer) {  // G-T1 derived
    EXPECT_EQ(coil::turnsThatFit(22 * mm, 0.117 * mm), 188);
    EXPECT_EQ(coil::layOut(small::alone(small::sectionOf("P", "a", 3000)), small::shop()).layers.size(), 16U);
}

TEST(PublishedGeometry, RoundTurnIsACircle) {
    // A former rounded until its corners meet is a cylinder: 2 pi r (derived), r = 5 mm and 7 mm.
    EXPECT_NEAR(coil::turnLength(8 * mm, 8 * mm, 1 * mm, 5 * mm, 1 * mm) / mm, 31.415927, 1e-6);
    EXPECT_NEAR(coil::turnLength(8 * mm, 8 * mm, 1 * mm, 5 * mm, 3 * mm) / mm, 43.982297, 1e-6);
}

TEST(PublishedGeometry, NestedLayersLieAtTheHeightOfATriangle) {
    // Orthocyclic lay: each further layer adds sin 60 deg = 0.8660 of a diameter (elementary; handbooks print 0.866).
    // Ten layers of 0.117 mm: 0.117 (1 + 9 x 0.866025) = 1.028925 mm; the last layer's own height stays whole.
    auto d = small::alone(small::sectionOf("P", "a", 10.0 * 188));
    d.coil[0].order[0].section()->lay = design::Lay::Nested;
    const auto build = coil::layOut(d, small::shop());
    ASSERT_EQ(build.layers.size(), 10U);
    EXPECT_NEAR(build.layers.back().box.x1 - build.layers.front().box.x0, 1.028925 * mm, 1e-6 * mm);
}

TEST(PublishedGeometry, AWildWindingFillsSeventyThreePercent) {
    // Share of copper and enamel in a wild section 0.73 (handbook rule for wild lay, from memory, author not certain):
    // 5000 turns of 0.117 mm on 22 mm are 3.347 mm high.
    auto d = small::alone(small::sectionOf("P", "a", 5000));
    d.coil[0].order[0].section()->lay = design::Lay::Random;
    const auto build = coil::layOut(d, small::shop());
    EXPECT_NEAR((build.layers.back().box.x1 - build.layers.front().box.x0) / mm, 3.347, 0.001);
}

}  // namespace geometry_test
