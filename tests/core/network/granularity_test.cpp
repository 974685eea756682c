// SPDX-License-Identifier: GPL-3.0-or-later
// How finely layers are cut: rules, and that the curve of a demo stays where sixteen pieces in every layer put it.
#include "network/granularity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "analysis/stages.h"
#include "demo_designs.h"

namespace granularity_test {

using network::Pieces;

coil::CoilBuild layersOf(std::initializer_list<double> turns) {
    coil::CoilBuild build;
    for (const double n : turns) {
        coil::Layer layer;
        layer.turns = n;
        build.layers.push_back(layer);
    }
    return build;
}

TEST(Granularity, FollowsTheCubeRootOfWhatIsNeglected) {
    const auto build = layersOf({400, 400, 400, 400});
    network::Vector shares(4);
    shares << 0.8, 0.1, 0.0125, 0;
    const Pieces pieces = network::piecesFor(build, shares);
    EXPECT_EQ(pieces[0], 16);
    EXPECT_NEAR(double(pieces[0]) / pieces[1], 1, 0.2);  // both at the most that a layer gets
    EXPECT_GT(pieces[1], pieces[3]);
    EXPECT_LE(std::accumulate(pieces.begin(), pieces.end(), 0), 60);
}

TEST(Granularity, NeverCutsFinerThanTwoTurnsNorFoil) {
    auto build = layersOf({1, 3, 9, 500});
    build.layers[3].conductor.foil = true;
    network::Vector shares = network::Vector::Constant(4, 0.5);
    EXPECT_EQ(network::piecesFor(build, shares), (Pieces{1, 1, 4, 1}));
    EXPECT_EQ(network::coarsePieces(build), (Pieces{1, 1, 2, 1}));
}

TEST(Granularity, NothingNeglectedNeedsNoMoreThanTheFewest) {
    coil::CoilBuild build = layersOf({});
    build.layers.assign(60, coil::Layer{});
    for (auto& layer : build.layers) layer.turns = 50;
    EXPECT_EQ(network::piecesFor(build, network::Vector::Zero(60)), Pieces(60, 1));
    EXPECT_EQ(network::coarsePieces(build), Pieces(60, 1));
}

/// The first hook-up with sixteen pieces in every layer.
network::Prepared finest(const design::Design& d, const analysis::Answer::Stages& stages) {
    Pieces pieces;
    for (const auto& layer : stages.build->layers)
        pieces.push_back(layer.conductor.foil ? 1 : std::clamp(static_cast<int>(layer.turns / 2), 1, 16));
    const auto leakage = field::leakageMatrix(network::refined(*stages.build, pieces), d.assumptions.ends);
    return network::Prepared(
        network::circuit(d, d.hookUps.front(),
                         {*stages.build, pieces, leakage, *stages.capacitance, stages.proximity.get(), *stages.core}));
}

class Converged : public testing::TestWithParam<const char*> {};

TEST_P(Converged, CurveIsThatOfSixteenPiecesUpToItsTop) {
    const auto answer = demos::answerOf(GetParam());
    const auto& stages = *answer->stages;
    const auto& solved = *stages.solved.at(answer->hookUp);
    const auto exact = finest(*stages.design, stages);
    const int output = solved.network.layout().voltage(solved.driven(), solved.observed());
    const auto decibel = [](network::Complex value) { return 20 * std::log10(std::abs(value)); };
    const auto exactly = [&](double f) { return decibel(exact.solve(f)(output)); };
    const double top = answer->figure("high_3dB_first")->value;
    for (const auto& [f, limit] : {std::pair{20e3, 0.005}, std::pair{top / 1.3, 0.05}})
        EXPECT_NEAR(decibel(solved.at(f, output)), exactly(f), limit) << f;
    // The upper -3 dB point itself lies within 2 %.
    const double half = exactly(1e3) - 20 * std::log10(std::sqrt(2.0));
    EXPECT_GT(exactly(top / 1.02), half);
    EXPECT_LT(exactly(top * 1.02), half);
}

INSTANTIATE_TEST_SUITE_P(Demos, Converged,
                         testing::Values("microphone-input", "ribbon-step-up", "line-unit", "splitter"),
                         [](const auto& tried) {
                             std::string name = tried.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

}  // namespace granularity_test
