// SPDX-License-Identifier: GPL-3.0-or-later
// Source: SciPy 1.10.1, computed here: stats.chi2; of Student's t stats.t.cdf and quantiles by special.betaincinv,
// since stats.t.ppf is off by 2e-9; of one degree of freedom the closed form cot(pi (1 - p)).
#include "measured/quantiles.h"

#include <gtest/gtest.h>

#include <cmath>

namespace quantiles_test {

struct Row {
    double freedom, share, quantile;
};

TEST(Quantiles, ChiSquaredAgreesWithSciPy) {
    for (const Row& row : {Row{1, 0.025, 0.0009820691171752555},
                           {1, 0.5, 0.454936423119572},
                           {1, 0.975, 5.023886187314888},
                           {2, 0.5, 1.386294361119891},
                           {5, 0.025, 0.8312116134866625},
                           {5, 0.975, 12.832501994030027},
                           {29, 0.025, 16.04707169536489},
                           {29, 0.975, 45.72228580417452},
                           {217, 0.5, 216.33369867168926},
                           {1000, 0.025, 914.257153799259},
                           {1000, 0.975, 1089.5309127749135}})
        EXPECT_NEAR(measured::chiSquaredQuantile(row.share, row.freedom) / row.quantile, 1, 1e-11) << row.freedom;
    EXPECT_NEAR(measured::chiSquaredProbability(3.5, 4), 0.522121655511276, 1e-14);
    EXPECT_NEAR(measured::chiSquaredProbability(400, 300), 0.9999032137800506, 1e-12);
    EXPECT_EQ(measured::chiSquaredProbability(0, 4), 0);
}

TEST(Quantiles, StudentAgreesWithSciPy) {
    for (const Row& row : {Row{1, 0.9, 3.077683537175254},
                           {1, 0.9995, 636.6192487687196},
                           {2, 0.975, 4.302652729749462},
                           {5, 0.975, 2.570581835636315},
                           {5, 0.9995, 6.868826625881274},
                           {29, 0.975, 2.045229642132704},
                           {217, 0.9, 1.2854650268111403},
                           {217, 0.9995, 3.335924410040144}}) {
        EXPECT_NEAR(measured::studentQuantile(row.share, row.freedom) / row.quantile, 1, 1e-11) << row.freedom;
        EXPECT_NEAR(measured::studentQuantile(1 - row.share, row.freedom) / row.quantile, -1, 1e-11) << row.freedom;
    }
    EXPECT_NEAR(measured::studentProbability(1.3, 7), 0.8826160823038114, 1e-13);
    EXPECT_NEAR(measured::studentProbability(-4, 3), 0.014004228005073078, 1e-14);
}

}  // namespace quantiles_test
