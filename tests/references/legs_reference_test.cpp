// SPDX-License-Identifier: GPL-3.0-or-later
// Coils on opposite sides of a core, outside it, against finite elements; origin in the data file.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "field/beside_legs.h"
#include "field/image_potential.h"
#include "field/leakage.h"

namespace legs_reference_test {

nlohmann::json dataFile() {
    return nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/legs.json"));
}

double millimetres(const nlohmann::json& value) {
    return value.get<double>() * 1e-3;
}

TEST(LegsReference, OppositeCoilsOutsideABlockOfIron) {
    const auto file = dataFile();
    for (const auto& c : file.at("cases")) {
        const auto& b = c.at("box");
        const std::vector<coil::Box> boxes{
            {millimetres(b[0]), millimetres(b[1]), millimetres(b[2]), millimetres(b[3])}};
        const field::IronBlock block{millimetres(c.at("w")), millimetres(c.at("below")), millimetres(c.at("above"))};
        for (const double unit : {1.0, 0.03}) {
            const double found = field::imageMatrix(boxes, unit)(0, 0) + field::aroundBlock(block, boxes, {1}, unit);
            EXPECT_NEAR(found, c.at("m").get<double>(), 3e-3 * found) << c.dump();
        }
    }
}

TEST(LegsReference, LegAgainstLegInSpace) {
    const auto file = dataFile();
    for (const auto& c : file.at("space")) {
        const auto of = [&](const char* key) { return millimetres(c.at(key)); };
        coil::CoilBuild build;
        build.legs = 2;
        build.tongue = build.outerLeg = of("leg");
        build.yoke = of("yoke");
        build.stack = of("stack");
        build.windowWidth = of("w");
        build.windowHeight = of("h");
        const bool thin = of("x1") == 0;
        for (const int leg : {1, 2}) {
            coil::Layer layer;
            layer.leg = leg;
            layer.turns = 1;
            layer.conductor.foil = true;
            layer.box = {of("x0"), thin ? 1e-5 : of("x1"), (of("h") - of("hc")) / 2, (of("h") + of("hc")) / 2};
            layer.turnLength = 2 * (of("leg") + of("stack")) + 8 * layer.box.middle();  // square corners
            build.layers.push_back(layer);
        }
        const auto m = field::leakageMatrix(build, design::Ends::Beyond).matrix;
        const double found = (m(0, 0) + m(1, 1) - 2 * m(0, 1)) / (4e-7 * std::numbers::pi);
        EXPECT_NEAR(found, of("L"), (thin ? 0.02 : 0.08) * of("L")) << c.dump();
    }
}

}  // namespace legs_reference_test
