// SPDX-License-Identifier: GPL-3.0-or-later
// Temperature rise of a wound part by its loss.
#include <gtest/gtest.h>

#include "analysis/headroom.h"

namespace heating_test {

/// W. T. McLyman, Transformer and Inductor Design Handbook: 0.03 W/cm2 warms by 25, 0.07 W/cm2 by 50 degrees (memory).
TEST(PublishedHeating, LossOfASquareCentimetre) {
    EXPECT_NEAR(analysis::lossForRise(25, 1e-4), 0.03, 5e-4);
    EXPECT_NEAR(analysis::lossForRise(50, 1e-4), 0.07, 5e-4);
}

}  // namespace heating_test
