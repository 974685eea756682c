// SPDX-License-Identifier: GPL-3.0-or-later
// Random-wound sections: what the program says of the whole body against a hundred windings with every wire at its
// place (scripts/wild.py).
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "field/leakage.h"
#include "field/winding_loss.h"

namespace wild_reference_test {

using nlohmann::json;
constexpr double mm = 1e-3;

json dataFile() {
    return json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/wild.json"));
}

/// The wild body and an even sheet of one turn, all of each turn within the window.
coil::CoilBuild buildOf(const json& c) {
    coil::CoilBuild build;
    build.stack = 1;
    build.windowWidth = c.at("w").get<double>() * mm;
    build.windowHeight = c.at("h").get<double>() * mm;
    const auto add = [&](const char* box, double turns, bool random) {
        coil::Layer layer;
        const auto& b = c.at(box);
        layer.box = {b[0].get<double>() * mm, b[1].get<double>() * mm, b[2].get<double>() * mm,
                     b[3].get<double>() * mm};
        layer.turns = turns;
        layer.turnLength = 2 * build.stack;
        layer.random = random;
        layer.conductor.foil = !random;
        layer.conductor.bare = c.at("bare").get<double>() * mm;
        layer.conductor.overall = c.at("overall").get<double>() * mm;
        build.layers.push_back(layer);
    };
    add("box", c.at("wires"), true);
    add("other", 1, false);
    return build;
}

TEST(WildReference, LeakageIsTheMeanOfAHundredWindings) {
    for (const auto& c : dataFile().at("cases")) {
        const auto build = buildOf(c);
        const Eigen::MatrixXd m = field::leakageMatrix(build, design::Ends::Beyond).matrix / (2 * build.stack);
        const Eigen::Vector2d current(1 / c.at("wires").get<double>(), -1);
        const double found = current.dot(m * current), mean = c.at("lambda").at("mean");
        EXPECT_NEAR(found, mean, 0.005 * mean) << c.at("id");
    }
}

TEST(WildReference, FieldAtTheWiresIsTheMeanOfAHundredWindings) {
    for (const auto& c : dataFile().at("cases")) {
        const auto form = field::proximityForm(buildOf(c), design::Ends::Walled);
        const Eigen::Vector2d current(1, -c.at("wires").get<double>());
        const double found = current.dot(form.ofLayer(0) * current), mean = c.at("square_field").at("mean");
        EXPECT_NEAR(found, mean, 0.02 * mean) << c.at("id");
    }
}

}  // namespace wild_reference_test
