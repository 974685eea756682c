// SPDX-License-Identifier: GPL-3.0-or-later
// Eddy currents of a foil across the field against finite elements; origin in the data file.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <complex>
#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "field/foil_eddies.h"

namespace foil_eddies_reference_test {

constexpr double length = 200, mm = 1e-3;

coil::CoilBuild build(const nlohmann::json& c) {
    coil::CoilBuild made;
    made.tongue = made.stack = 50;  // so long a turn that its growth with x does not count
    made.windowWidth = 8 * mm;
    made.windowHeight = 30 * mm;
    for (const auto& box : c.at("windings")) {
        coil::Layer winding;
        winding.turns = 1;
        const auto of = [&](std::size_t k) { return box[k].get<double>() * mm; };
        winding.box = {of(0), of(1), of(2), of(3)};
        winding.turnLength = length;
        made.layers.push_back(winding);
    }
    const double x0 = c.at("x0").get<double>() * mm, t = c.at("t").get<double>() * mm;
    const double low = c.at("low").get<double>() * mm;
    coil::Foil foil;
    foil.box = {x0, x0 + t, low, made.windowHeight - low};
    foil.turnLength = length;
    foil.conductor.foil = true;
    foil.conductor.bare = foil.conductor.overall = t;
    made.foils = {foil};
    return made;
}

TEST(FoilEddiesReference, BetweenOrBesideWindingsAgainstEachOther) {
    const auto file = nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/foil_eddies.json"));
    for (const auto& c : file.at("cases")) {
        const auto eddies = field::foilEddies(build(c), design::Ends::Walled, 1e6);
        const Eigen::Vector2d against(1, -1);
        for (const auto& point : c.at("L")) {
            const std::complex<double> jw(0, 2 * std::numbers::pi * point[0].get<double>());
            Eigen::MatrixXcd loops = jw * eddies.inductance.cast<std::complex<double>>();
            loops.diagonal() += eddies.resistance.cast<std::complex<double>>();
            const Eigen::VectorXcd to = jw * (eddies.mutual.transpose() * against).cast<std::complex<double>>();
            const std::complex<double> z =
                jw * against.dot(eddies.leakage * against) - (to.transpose() * loops.partialPivLu().solve(to))(0);
            const auto found = z / jw / (length * 4e-7 * std::numbers::pi);
            const std::complex<double> expected(point[1], -point[2].get<double>());
            EXPECT_LT(std::abs(found - expected), 0.01 * std::abs(expected))
                << found << " " << expected << " at " << point[0] << " Hz, " << c.at("t") << " mm";
        }
    }
}

}  // namespace foil_eddies_reference_test
