// SPDX-License-Identifier: GPL-3.0-or-later
// Flux that cores draw from a uniform field, against finite elements; origin in the data file.
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>

#include "analysis/hum.h"

namespace core_in_field_reference_test {

nlohmann::json dataFile() {
    return nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/core_in_field.json"));
}

double millimetres(const nlohmann::json& value) {
    return value.get<double>() * 1e-3;
}

TEST(CoreInFieldReference, TheElementsFindAKnownCube) {
    const auto cube = dataFile().at("cube");
    EXPECT_NEAR(cube.at("found").get<double>(), cube.at("expected").get<double>(),
                3e-3 * cube.at("expected").get<double>());
}

TEST(CoreInFieldReference, EllipsoidOfTheCoresVolumeDrawsItsFlux) {
    const auto file = dataFile();
    ASSERT_EQ(file.at("cases").size(), 7U);
    for (const auto& c : file.at("cases")) {
        ASSERT_LT(c.at("mesh").get<double>(), 0.005);
        coil::CoilBuild build;
        build.legs = c.at("legs");
        build.tongue = millimetres(c.at("tongue"));
        build.windowWidth = millimetres(c.at("width"));
        build.windowHeight = millimetres(c.at("height"));
        build.outerLeg = millimetres(c.at("outer"));
        build.yoke = millimetres(c.at("yoke"));
        build.stack = millimetres(c.at("stack"));
        const auto flux = analysis::legFlux(build, c.at("permeability"));
        const double expected = c.at("first");
        EXPECT_NEAR(flux.first / expected, 1, 0.09) << c.dump();
        EXPECT_EQ(flux.second, build.legs == 2 ? flux.first : 0);
    }
}

}  // namespace core_in_field_reference_test
