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

namespace {

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

}  // namespace
