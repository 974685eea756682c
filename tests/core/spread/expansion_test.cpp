// SPDX-License-Identifier: GPL-3.0-or-later
// Units by expansion against units with fields of their own, and slopes.
#include <gtest/gtest.h>

#include <cmath>

#include "promising.h"
#include "spread/sensitivity.h"

namespace expansion_test {

/// Units by expansion and with fields of their own: in shares of each column's standard deviation, the greatest
/// difference of one unit and of the mean.
void expectExpandedNear(const design::Design& design, double ofOne, double ofMean) {
    constexpr std::uint64_t count = 200;
    auto plan = planOf(count, {});
    const spread::Study quick(design, shop(), usual(), plan);
    ASSERT_EQ(quick.expansion().units, 8U);
    plan.exact = true;
    const spread::Study own(design, shop(), usual(), plan);
    EXPECT_EQ(own.expansion().units, 0U);
    const auto one = quick.run(0, count), other = own.run(0, count);
    EXPECT_EQ(one.kept, other.kept);
    for (std::size_t c = 0; c < own.columns().size(); ++c) {
        double worst = 0;
        for (std::uint64_t k = 0; k < count; ++k)
            worst = std::max(worst, std::abs(one.values[k][c] - other.values[k][c]));
        const std::string name = own.columns()[c].name;
        EXPECT_LT(worst, ofOne * deviation(other, c)) << name;
        EXPECT_NEAR(mean(one, c), mean(other, c), ofMean * deviation(other, c)) << name;
        EXPECT_NEAR(deviation(one, c), deviation(other, c), 0.02 * deviation(other, c)) << name;
    }
}

/// What is left out is what two numbers do together: it shows in the upper end, a few hundredths of its deviation.
TEST(Spread, ExpandedUnitsAreThoseWithFieldsOfTheirOwn) {
    auto d = promising();
    d.coil[0].order[2].section()->interlayer = small::barrier(36e-6).ply;
    expectExpandedNear(d, 0.2, 0.05);
}

/// Layers that lie on each other without paper: their capacitance falls steeply as soon as they leave each other.
TEST(Spread, ExpandedUnitsOfBareLayers) {
    expectExpandedNear(promising(), 0.3, 0.05);
}

TEST(Spread, FieldsOfTheirOwnWhereAPromiseNeedsThem) {
    const spread::Study study(promising(), shop(), usual(), planOf(2, {"leakage_10kHz.P.S"}));
    EXPECT_EQ(study.expansion().units, 0U);
    const auto batch = study.run(0, 2);
    EXPECT_NE(batch.values[0].back(), batch.values[1].back());
}

/// dcr.P goes with the stretch factor alone in proportion, and not with what lies outside it.
TEST(Sensitivity, OfTheResistance) {
    const auto d = promising();
    const spread::Study study(d, shop(), usual(), planOf(1, {}));
    const auto slopes = spread::sensitivities(study);
    const std::size_t copper = 2;
    const double nominal = *study.columns()[copper].nominal;
    for (const auto& slope : slopes[copper]) {
        const auto& v = study.variation().all[slope.varying];
        if (v.place == "/windings/0/resistance_factor") {
            EXPECT_NEAR(slope.derivative, nominal, 1e-9 * nominal);
            EXPECT_NEAR(slope.effect, 0.005 * nominal, 1e-9 * nominal);
        }
        if (v.place == "/coil/0/order/1/barrier/thickness" || v.place == "/core/stack/0/permeability_factor") {
            EXPECT_EQ(slope.derivative, 0);
        }
    }
    EXPECT_EQ(study.variation().all[slopes[copper].front().varying].name, "bare diameter of wire wire");
}

}  // namespace expansion_test
