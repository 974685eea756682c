// SPDX-License-Identifier: GPL-3.0-or-later
// Wild windings: a few simulated ones against the many of the data file, and the even body against both.
#include "wild_winding.h"

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "field/capacitance.h"
#include "field/leakage.h"

namespace wild_winding_test {

using std::numbers::pi;
constexpr double diameter = 1e-4, mu0 = 4e-7 * pi;

struct Drawn {
    double fill = 0, leakage = 0, neighbours = 0;
};

/// What one winding gives against the even body of its own height.
Drawn draw(int count, double width, double scatter, unsigned seed) {
    const auto wires = wild::wound(count, width, scatter, seed);
    double height = 0, top = 0;
    for (const auto& w : wires) {
        height += 2 * w.x / count;
        top = std::max(top, w.x + 0.5);
    }
    Drawn result;
    result.fill = count * pi / 4 / (height * width);
    const double half = std::sqrt(pi / 4) / 2 * 0.999;
    std::vector<field::CurrentBox> boxes;
    const auto add = [&](double x0, double x1, double y0, double y1) {
        boxes.push_back({{x0 * diameter, x1 * diameter, y0 * diameter, y1 * diameter}, 1});
    };
    for (const auto& w : wires) add(w.x + 1 - half, w.x + 1 + half, w.y + 3 - half, w.y + 3 + half);
    add(top + 2, top + 4, 3, width + 3);
    add(1, 1 + height, 3, width + 3);
    const field::Window window{(top + 6) * diameter, (width + 6) * diameter};
    const Eigen::MatrixXd m = field::windowMatrix(boxes, window, field::Surroundings::Closed);
    const double other = m(count, count);
    const double placed = m.topLeftCorner(count, count).mean() + other - 2 * m.col(count).head(count).mean();
    // A wire's own area within the cell that the even body gives it.
    const double own = mu0 / (2 * pi) / count * std::log(std::sqrt(1 / result.fill));
    const double body = m(count + 1, count + 1) + other - 2 * m(count, count + 1) + own;
    result.leakage = placed / body;
    const double stroke = width - 1;
    double sum = 0, pairs = 0;
    for (int i = 0; i < count; ++i)
        for (int k = 0; k + 2 < i; ++k) {
            const auto &a = wires[std::size_t(i)], &b = wires[std::size_t(k)];
            if (std::hypot(a.x - b.x, a.y - b.y) >= 1.15) continue;
            sum += double(i - k) * (i - k);
            ++pairs;
        }
    result.neighbours = sum / pairs / (stroke * stroke) / (4.0 / 3 * (1 - stroke / count));
    return result;
}

nlohmann::json dataFile() {
    return nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/wild_winding.json"));
}

TEST(WildWinding, AFewAreLikeTheMany) {
    constexpr int few = 6;
    const auto file = dataFile();
    for (const auto& c : file.at("cases")) {
        if (c.at("wires") > 200) continue;
        Drawn mean;
        for (unsigned seed = 1; seed <= few; ++seed) {
            const auto one = draw(c.at("wires"), c.at("width"), c.at("scatter"), seed);
            mean.fill += one.fill / few;
            mean.leakage += one.leakage / few;
            mean.neighbours += one.neighbours / few;
        }
        const auto near = [&](const char* key, double found) {
            const double error = c.at(key)[1].get<double>() / std::sqrt(double(few));
            EXPECT_NEAR(found, c.at(key)[0].get<double>(), 4 * error) << key << " " << c.dump();
        };
        near("fill", mean.fill);
        near("leakage_true_body", mean.leakage);
        near("neighbours", mean.neighbours);
    }
}

TEST(WildWinding, TheStatedSpreadsCoverWhatChanceDoes) {
    coil::CoilBuild build;
    build.windowWidth = 0.01;
    build.windowHeight = 0.02;
    build.tongue = build.stack = 0.01;
    build.layers.resize(1);
    build.layers[0].turns = 100;
    build.layers[0].random = true;
    build.layers[0].box = {0.001, 0.002, 0.001, 0.019};
    build.layers[0].turnLength = 0.05;
    build.layers[0].conductor.bare = 0.09e-3;
    build.layers[0].conductor.overall = 0.1e-3;
    const double leakage = field::leakageMatrix(build, design::Ends::Walled).spread;
    const auto file = dataFile();
    for (const auto& c : file.at("cases")) {
        // The even body itself is good to 1.5 %; laid out at its rule's fill it is within the spread and three
        // deviations.
        EXPECT_NEAR(c.at("leakage_true_body")[0].get<double>(), 1, 0.015) << c.dump();
        const double off = c.at("leakage_laid_out")[0].get<double>() - 1, by = c.at("leakage_laid_out")[1];
        EXPECT_LT(off, leakage + 3 * by) << c.dump();
        EXPECT_LT(std::abs(c.at("neighbours")[0].get<double>() - 1), field::wildSpread) << c.dump();
    }
}

}  // namespace wild_winding_test
