// SPDX-License-Identifier: GPL-3.0-or-later
// Loss of foil windings against finite elements of our own (scripts/foil.py).
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "field/winding_loss.h"

namespace {

TEST(FoilReference, OverTheWholeHeightDowellsFactorIsExact) {
    const auto file = nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/foil.json"));
    const auto& c = file.at("cases")[0];
    ASSERT_EQ(c.at("id"), "F1");
    for (std::size_t k = 0; k < file.at("frequencies").size(); ++k) {
        const double depth = field::skinDepth(file.at("frequencies")[k], 1.7241e-8);
        const double found = field::dowellFactor(c.at("thick").get<double>() * 1e-3 / depth, c.at("count"));
        const double expected = c.at("winding")[k];
        EXPECT_NEAR(found, expected, 1e-5 * expected) << file.at("frequencies")[k];
    }
}

}  // namespace
