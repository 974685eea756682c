// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/lead_outs.h"

#include <gtest/gtest.h>

#include <cmath>

#include "coil/wire_resistance.h"
#include "small_transformer.h"

namespace lead_outs_test {

TEST(LeadOuts, StraightWireHasTheTablesInductance) {
    // 1 m of wire 1 mm thick: 0.2 [ln(4000) - 3/4] uH = 1.5088 (Rosa 1908, from memory; arithmetic here).
    EXPECT_NEAR(coil::straightWireInductance(1, 0.5e-3), 1.5088e-6, 2e-10);
}

TEST(LeadOuts, ThereAndBackIsTheTwoWireLine) {
    // mu0/pi [ln(d/r) + 1/4] a metre far from the ends (elementary): their share goes as d/l.
    const double length = 100, d = 5e-3, r = 0.25e-3;
    const double pair = 2 * (coil::straightWireInductance(length, r) - coil::parallelWiresInductance(length, d));
    EXPECT_NEAR(pair / length, 4e-7 * (std::log(d / r) + 0.25), 1e-4 * pair / length);
    // Twice as long, a little more than twice the inductance: ends count less.
    EXPECT_GT(coil::straightWireInductance(0.2, r), 2 * coil::straightWireInductance(0.1, r));
}

TEST(LeadOuts, AreOnePerWindingAndTerminalWithALength) {
    auto d = small::transformer();
    d.terminals[0].leadLength = 0.1;
    d.terminals[2].leadLength = 0.2;
    const auto build = coil::layOut(d, small::shop());
    ASSERT_EQ(build.leads.size(), 2U);
    EXPECT_EQ(build.leads[0].winding, "P");
    EXPECT_EQ(build.leads[0].terminal, "1");
    EXPECT_EQ(build.leads[0].length, 0.1);
    // Fine wire comes out on flexible lead; 0.055 mm2 of copper.
    EXPECT_NEAR(build.leads[0].resistance20, 1.7241e-8 * 0.1 / 0.055e-6, 1e-3 * build.leads[0].resistance20);
    EXPECT_EQ(build.leads[1].terminal, "3");
}

TEST(LeadOuts, ToAPinAreTheWindingsOwnWire) {
    auto d = small::transformer();
    auto shop = small::shop();
    shop.bobbins["bobbin"].pins.resize(2);
    shop.bobbins["bobbin"].pins[0] = {1, 4e-3, 1e-2, "low"};
    shop.bobbins["bobbin"].pins[1] = {2, -4e-3, 1e-2, "high"};
    d.terminals[0].pin = 1;
    d.terminals[1].pin = 2;
    const auto build = coil::layOut(d, shop);
    ASSERT_EQ(build.leads.size(), 2U);
    // P.a starts low, where its pin is, in the first layer; the window ends 9 mm out. Sideways 4 mm.
    const double out = 9e-3 - build.layers[0].box.middle();
    EXPECT_NEAR(build.leads[0].length, out + 4e-3, 1e-12);
    EXPECT_NEAR(build.leads[1].length, out + 4e-3, 1e-12);
    EXPECT_DOUBLE_EQ(build.leads[0].diameter, small::bare);
    d.terminals[0].pin = 2;
    d.terminals[1].pin = 1;
    const auto across = coil::layOut(d, shop);  // both pins at the other flange: over the coil's width
    EXPECT_NEAR(across.leads[0].length, out + 4e-3 + across.layers[0].box.height(), 1e-12);
}

}  // namespace lead_outs_test
