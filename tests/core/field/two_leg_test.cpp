// SPDX-License-Identifier: GPL-3.0-or-later
// Coils on both legs of a two-leg core: limits, symmetry, and what no arrangement may do.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <numbers>
#include <random>

#include "field/beside_legs.h"
#include "field/image_potential.h"
#include "field/leakage.h"
#include "field/yoke_to_yoke.h"

namespace field {
namespace two_leg_test {

using std::numbers::pi;

/// Three layers on each leg, each of its own height and place; `seed` 0: the same on both.
coil::CoilBuild twoLegs(unsigned seed) {
    std::mt19937 draw(seed);
    std::uniform_real_distribution<double> unit(0, 1);
    coil::CoilBuild build;
    build.legs = 2;
    build.tongue = build.outerLeg = build.yoke = 0.01;
    build.stack = 0.012;
    build.windowWidth = 0.01;
    build.windowHeight = 0.03;
    build.bobbinWall = 0.001;
    for (const int leg : {1, 2})
        for (int k = 0; k < 3; ++k) {
            coil::Layer layer;
            layer.leg = leg;
            const double x = 0.001 + k * 0.0011, low = seed == 0 ? 0.001 : 0.001 + 0.01 * unit(draw);
            layer.box = {x, x + 0.001, low, seed == 0 ? 0.029 : low + 0.003 + 0.014 * unit(draw)};
            layer.turns = 40 + 20 * k;
            layer.conductor.bare = 0.4e-3;
            layer.turnLength = 0.044 + 0.008 + 2 * pi * (layer.box.middle() - 0.001);
            build.layers.push_back(layer);
        }
    return build;
}

/// Per turn: currents are ampere-turns.
Eigen::MatrixXd perTurn(const coil::CoilBuild& build, design::Ends ends) {
    const auto result = leakageMatrix(build, ends);
    EXPECT_TRUE(result.valid) << result.why;
    Eigen::MatrixXd m = result.matrix;
    for (Eigen::Index i = 0; i < m.rows(); ++i)
        for (Eigen::Index k = 0; k < m.cols(); ++k)
            m(i, k) /= build.layers[std::size_t(i)].turns * build.layers[std::size_t(k)].turns;
    return m;
}

double lambda(const Eigen::MatrixXd& m, Eigen::Index i, Eigen::Index k) {
    return m(i, i) + m(k, k) - 2 * m(i, k);
}

TEST(TwoLegs, ExchangedLeaveEverything) {
    const auto build = twoLegs(5);
    auto other = build;
    for (auto& layer : other.layers) layer.leg = 3 - layer.leg;
    for (const auto ends : {design::Ends::Beyond, design::Ends::Walled}) {
        const auto a = perTurn(build, ends), b = perTurn(other, ends);
        EXPECT_LT((a - b).cwiseAbs().maxCoeff(), 1e-9 * a.cwiseAbs().maxCoeff());
    }
}

TEST(TwoLegs, ACoilOnTheOtherLegWithoutCurrentChangesNothing) {
    const auto both = twoLegs(7);
    auto one = both;
    one.layers.resize(3);
    const auto a = perTurn(both, design::Ends::Beyond), b = perTurn(one, design::Ends::Beyond);
    for (int i = 0; i < 3; ++i)
        for (int k = 0; k < i; ++k) EXPECT_NEAR(lambda(a, i, k), lambda(b, i, k), 1e-9 * lambda(b, i, k));
}

TEST(TwoLegs, HalvesOnBothLegsLeakWhatEachLegLeaksAlone) {
    // Half of either winding on each leg: every leg is balanced in itself, nothing crosses.
    const auto build = twoLegs(0);
    const auto m = perTurn(build, design::Ends::Beyond);
    Eigen::VectorXd halves(6);
    halves << 0.5, 0, -0.5, 0.5, 0, -0.5;
    Eigen::VectorXd oneLeg = Eigen::VectorXd::Zero(6);
    oneLeg(0) = 1;
    oneLeg(2) = -1;
    const Eigen::VectorXd linked = m * halves, alone = m * oneLeg;
    // Half the energy of all ampere-turns on one leg, but for what the two coils share in the one window.
    EXPECT_NEAR(halves.dot(linked), oneLeg.dot(alone) / 2, 0.06 * oneLeg.dot(alone));
    // Against each other they leak many times more.
    EXPECT_GT(lambda(m, 0, 3), 20 * halves.dot(linked));
}

TEST(TwoLegs, InnerLayersLeakMoreAcrossTheCoreThanOuterOnes) {
    const auto m = perTurn(twoLegs(0), design::Ends::Beyond);
    // Between an inner layer's leg and its coil there is no field: further out, all the space within is left out.
    EXPECT_GT(lambda(m, 0, 3), lambda(m, 2, 5));
    EXPECT_NEAR(lambda(m, 0, 5), (lambda(m, 0, 3) + lambda(m, 2, 5)) / 2, 0.02 * lambda(m, 0, 5));
}

class TwoLegsAtRandom : public testing::TestWithParam<unsigned> {};

TEST_P(TwoLegsAtRandom, NoArrangementHasNegativeEnergy) {
    for (const auto ends : {design::Ends::Beyond, design::Ends::Walled}) {
        const auto m = perTurn(twoLegs(GetParam()), ends);
        const Eigen::MatrixXd balance = Eigen::MatrixXd::Identity(6, 6) - Eigen::MatrixXd::Constant(6, 6, 1.0 / 6);
        const Eigen::VectorXd values =
            Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(balance * m * balance).eigenvalues();
        EXPECT_GT(values(0), -1e-12 * values(5));
        EXPECT_GT(values(1), 1e-9 * values(5));
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, TwoLegsAtRandom, testing::Range(1u, 9u));

TEST(AroundBlock, IsTheSameInEveryUnitAndSize) {
    const std::vector<coil::Box> box{{0.001, 0.003, 0.004, 0.02}};
    const IronBlock block{0.02, -0.01, 0.035};
    const double inMetres = imageMatrix(box, 1)(0, 0) + aroundBlock(block, box, {1}, 1);
    EXPECT_NEAR(imageMatrix(box, 0.03)(0, 0) + aroundBlock(block, box, {1}, 0.03), inMetres, 1e-9);
    const std::vector<coil::Box> twice{{0.002, 0.006, 0.008, 0.04}};
    const IronBlock big{0.04, -0.02, 0.07};
    EXPECT_NEAR(imageMatrix(twice, 1)(0, 0) + aroundBlock(big, twice, {1}, 1), inMetres, 1e-9);
}

TEST(YokeToYoke, GrowsInProportionToSize) {
    const TwoLegOutline core{0.01, 0.01, 0.01, 0.03, 0.012};
    const TwoLegOutline twice{0.02, 0.02, 0.02, 0.06, 0.024};
    EXPECT_NEAR(yokeToYoke(twice), 2 * yokeToYoke(core), 1e-9);
    TwoLegOutline deeper = core;
    deeper.stack *= 2;
    // The window alone would give stack x w / h more, the outer sides about half a metre per metre each.
    EXPECT_GT(yokeToYoke(deeper) - yokeToYoke(core), 0.012 * (1.0 / 3 + 2 * 0.4));
}

}  // namespace two_leg_test
}  // namespace field
