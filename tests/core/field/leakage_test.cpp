// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/leakage.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <numbers>
#include <random>

#include "field/image_potential.h"
#include "field/window_series.h"

namespace field {
namespace leakage_test {

using std::numbers::pi;
constexpr double mu0 = 4e-7 * pi;

double meanCosine(double k, double from, double to) {
    return k == 0 ? 1 : (std::sin(k * to) - std::sin(k * from)) / (k * (to - from));
}

/// Roth's double series as it stands, both directions summed term by term.
double doubleSeries(const coil::Box& a, const coil::Box& b, const Window& w, int terms) {
    double sum = 0;
    for (int m = 0; m <= terms; ++m)
        for (int n = 0; n <= terms; ++n) {
            if (m + n == 0) continue;
            const double p = m * pi / w.width, q = n * pi / w.height;
            sum += (m > 0 ? 2 : 1) * (n > 0 ? 2 : 1) * meanCosine(p, a.x0, a.x1) * meanCosine(q, a.y0, a.y1) *
                   meanCosine(p, b.x0, b.x1) * meanCosine(q, b.y0, b.y1) / (p * p + q * q);
        }
    return mu0 / (w.width * w.height) * sum;
}

/// A build with layers as a coil of `count` layers has them, some part-filled, some in the other sense.
coil::CoilBuild randomBuild(unsigned seed, int count, bool chambers) {
    std::mt19937 draw(seed);
    std::uniform_real_distribution<double> unit(0, 1);
    coil::CoilBuild build;
    build.tongue = build.stack = 0.016;
    build.windowWidth = 0.008;
    build.windowHeight = 0.024;
    build.bobbinWall = 0.0012;
    double x[2] = {0.0012, 0.0012};
    for (int i = 0; i < count; ++i) {
        const int chamber = chambers ? i % 2 : 0;
        const double thick = 0.06e-3 + 0.1e-3 * unit(draw);
        coil::Layer layer;
        const double low = chambers && chamber == 1 ? 0.0125 : 0.0012,
                     high = chambers && chamber == 0 ? 0.0115 : 0.0228;
        layer.box = {x[chamber], x[chamber] + thick, low, high};
        if (unit(draw) < 0.3) layer.box.y1 = low + (high - low) * (0.05 + 0.9 * unit(draw));
        x[chamber] += thick + 0.03e-3 * unit(draw);
        layer.turns = std::floor(layer.box.height() / (thick * 1.1)) + 1;
        layer.sense = unit(draw) < 0.2 ? -1 : 1;
        layer.conductor.bare = 0.8 * thick;
        layer.turnLength = 0.064 + 8 * 0.0012 + 2 * pi * (layer.box.middle() - 0.0012);
        build.layers.push_back(layer);
    }
    return build;
}

Eigen::VectorXd signedTurns(const coil::CoilBuild& build) {
    Eigen::VectorXd turns(static_cast<Eigen::Index>(build.layers.size()));
    for (std::size_t i = 0; i < build.layers.size(); ++i)
        turns(static_cast<Eigen::Index>(i)) = build.layers[i].sense * build.layers[i].turns;
    return turns;
}

/// lambda of layers i and j per turn squared, from a matrix for currents in their wires.
double lambda(const Eigen::MatrixXd& m, const Eigen::VectorXd& turns, Eigen::Index i, Eigen::Index j) {
    return m(i, i) / (turns(i) * turns(i)) + m(j, j) / (turns(j) * turns(j)) - 2 * m(i, j) / (turns(i) * turns(j));
}

TEST(WindowMatrix, AgreesWithTheDoubleSeriesSummedTermByTerm) {
    const Window w{0.007, 0.02};
    const std::vector<CurrentBox> boxes{{{0.001, 0.003, 0.002, 0.017}, 1},
                                        {{0.0035, 0.0062, 0.004, 0.019}, 1},
                                        {{0.002, 0.005, 0.0005, 0.0018}, 1},  // overlaps both in x
                                        {{0.001, 0.003, 0.0175, 0.0195}, 1}};
    const Eigen::MatrixXd m = windowMatrix(boxes, w, Surroundings::Closed);
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = 0; j < boxes.size(); ++j) {
            const double series = doubleSeries(boxes[i].box, boxes[j].box, w, 300);
            // The series summed term by term is itself short by its tail, < 2e-5 of the largest entry.
            EXPECT_NEAR(m(Eigen::Index(i), Eigen::Index(j)), series, 2e-5 * m.cwiseAbs().maxCoeff()) << i << ' ' << j;
        }
    EXPECT_EQ(m, m.transpose());
}

TEST(WindowMatrix, OfFullHeightCoilsIsTheHandbookFormula) {
    const Window w{0.008, 0.02};
    const std::vector<CurrentBox> boxes{{{0.0011, 0.0024, 0, 0.02}, 1}, {{0.0029, 0.0061, 0, 0.02}, 1}};
    const double expected = mu0 / 0.02 * ((0.0013 + 0.0032) / 3 + 0.0005);
    EXPECT_NEAR(pairLambda(windowMatrix(boxes, w, Surroundings::Closed))(0, 1), expected, 1e-12 * expected);
}

TEST(WindowMatrix, HasConvergedForThinNeighboursWithMargins) {
    // Two layers of 0.05 mm wire in a window of 30 mm with 1.5 mm margins; the series summed to 20000 terms in the same
    // closed form of x: thin sheets a distance c apart: g_ii + g_jj - 2 g_ij written out.
    const double h = 0.03, w = 0.01, a = 0.05e-3, c = 0.06e-3, low = 1.5e-3, high = 28.5e-3, x0 = 4e-3;
    const std::vector<CurrentBox> boxes{{{x0, x0 + a, low, high}, 1}, {{x0 + c, x0 + c + a, low, high}, 1}};
    double sum = (c - a + 2 * a / 3) / h;
    for (int n = 1; n <= 20000; ++n) {
        const double k = n * pi / h, f = meanCosine(k, low, high), s = -std::expm1(-k * a) / (k * a);
        const double self = 2 * (std::exp(-k * a) - 1 + k * a) / (k * k * a * a);
        const auto image = [&](double x) { return std::exp(-2 * k * x) + std::exp(-2 * k * (w - x)); };
        const double x1 = x0 + a / 2, x2 = x1 + c, sinh = std::sinh(std::min(k * a / 2, 300.0)) / (k * a / 2);
        const double walls = k * x0 > 200 ? 0 : sinh * sinh * (image(x1) + image(x2) - 2 * image((x1 + x2) / 2));
        const double back = k * w > 200 ? 0 : std::exp(-2 * k * w);  // once round both walls
        const double grown = back * 4 * ((std::exp(std::min(k * a, 300.0)) - 1 - k * a) / (k * k * a * a));
        const double across = back * 2 * sinh * sinh * std::exp(std::min(k * c, 300.0));
        sum += 2 / h * f * f / (2 * k) * (2 * self - 2 * s * s * std::exp(-k * (c - a)) + walls + grown - across) /
               (1 - back);
    }
    const double found = pairLambda(windowMatrix(boxes, {w, h}, Surroundings::Closed))(0, 1);
    EXPECT_NEAR(found, mu0 * sum, 1e-4 * found);
}

TEST(WindowMatrix, StaysFiniteInExtremeWindows) {
    for (const Window w : {Window{0.1, 0.002}, Window{0.0005, 0.2}}) {
        std::vector<CurrentBox> boxes;
        for (int i = 0; i < 4; ++i)
            boxes.push_back(
                {{w.width * (0.1 + 0.2 * i), w.width * (0.25 + 0.2 * i), w.height * 0.05, w.height * 0.9}, 1});
        for (const auto around : {Surroundings::Closed, Surroundings::Open})
            EXPECT_TRUE(windowMatrix(boxes, w, around).allFinite());
        const Eigen::MatrixXd l = pairLambda(windowMatrix(boxes, w, Surroundings::Closed));
        EXPECT_GT(l(0, 3), l(0, 1));
        EXPECT_GT(l(0, 1), 0);
    }
}

TEST(MeanLogDistance, AgreesWithQuadrature) {
    const coil::Box a{1, 1.4, 0, 3}, b{1.9, 2.6, 1, 5};
    double sum = 0;
    constexpr int n = 40;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
            for (int k = 0; k < n; ++k)
                for (int l = 0; l < n; ++l)
                    sum += std::log(std::hypot(a.x0 + a.width() * (i + 0.5) / n - b.x0 - b.width() * (k + 0.5) / n,
                                               a.y0 + a.height() * (j + 0.5) / n - b.y0 - b.height() * (l + 0.5) / n));
    EXPECT_NEAR(meanLogDistance(a, b), sum / std::pow(n, 4), 1e-4);  // midpoint rule's own error
}

TEST(MeanLogDistance, OfKnownShapes) {
    // Square of side 1: geometric mean distance 0.44705 (Maxwell; Rosa and Grover, from memory).
    EXPECT_NEAR(std::exp(meanLogDistance({0, 1, 0, 1}, {0, 1, 0, 1})), 0.44705, 1e-5);
    // Straight line of length b: b e^(-3/2) (Maxwell, from memory; elementary integral).
    EXPECT_NEAR(std::exp(meanLogDistance({0, 1e-5, 0, 1}, {0, 1e-5, 0, 1})), std::exp(-1.5), 1e-4);
    // Far apart: the distance of the middles.
    EXPECT_NEAR(meanLogDistance({0, 1, 0, 1}, {300, 301, 0, 1}), std::log(300), 1e-5);
}

TEST(MeanLogDistance, OfThinLayersKeepsItsDigits) {
    // Two sheets of 20 um, 50 mm high, 25 um apart: differences of lambda against the same in stretched coordinates.
    const auto lambdaOf = [](double unit) {
        const coil::Box a{0.0, 20e-6 * unit, 0, 0.05 * unit}, b{25e-6 * unit, 45e-6 * unit, 0, 0.05 * unit};
        return meanLogDistance(a, a) + meanLogDistance(b, b) - 2 * meanLogDistance(a, b);
    };
    EXPECT_NEAR(lambdaOf(1), lambdaOf(19.7), 1e-4 * std::abs(lambdaOf(1)));
    // Near field of wide sheets: c - a/3 over the height, times 2 pi, less the spread at the ends.
    EXPECT_NEAR(-lambdaOf(20) / (2 * pi) * 0.05, 25e-6 - 20e-6 / 3, 2e-2 * 20e-6);
}

TEST(PairLambda, IsIndifferentToTheGauge) {
    Eigen::MatrixXd m(2, 2);
    m << 3, 1, 1, 5;
    EXPECT_DOUBLE_EQ(pairLambda(m)(0, 1), 6);
    EXPECT_DOUBLE_EQ(pairLambda(m)(1, 1), 0);
    EXPECT_DOUBLE_EQ(pairLambda(m.array() + 7)(0, 1), 6);
}

class LeakageOfRandomBuilds : public testing::TestWithParam<unsigned> {};

TEST_P(LeakageOfRandomBuilds, IsSymmetricAndPositive) {
    const auto build = randomBuild(GetParam(), 12 + static_cast<int>(GetParam()) * 3, GetParam() % 2 == 1);
    for (const auto ends : {design::Ends::Beyond, design::Ends::Walled}) {
        const auto result = leakageMatrix(build, ends);
        EXPECT_TRUE(result.valid) << result.why;
        const Eigen::VectorXd perTurn = signedTurns(build).cwiseInverse();
        const Eigen::MatrixXd m = perTurn.asDiagonal() * result.matrix * perTurn.asDiagonal();
        EXPECT_LT((m - m.transpose()).cwiseAbs().maxCoeff(), 1e-14 * m.cwiseAbs().maxCoeff());
        // Ampere-turns that sum to zero: project the evenly spread part out.
        const auto n = m.rows();
        const Eigen::MatrixXd balance =
            Eigen::MatrixXd::Identity(n, n) - Eigen::MatrixXd::Constant(n, n, 1.0 / static_cast<double>(n));
        const Eigen::VectorXd values =
            Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(balance * m * balance).eigenvalues();
        EXPECT_GT(values(0), -1e-12 * values(n - 1));
        EXPECT_GT(values(1), 1e-9 * values(n - 1));  // only the projected direction is free of energy
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, LeakageOfRandomBuilds, testing::Range(1u, 11u));

TEST(LeakageMatrix, OfALayerCutAlongTheAxisAddsUpToTheWholeLayer) {
    auto whole = randomBuild(3, 6, false);
    auto cut = whole;
    const coil::Layer layer = whole.layers[2];
    cut.layers.erase(cut.layers.begin() + 2);
    for (int i = 0; i < 4; ++i) {
        coil::Layer piece = layer;
        piece.box.y0 = layer.box.y0 + layer.box.height() * i / 4;
        piece.box.y1 = layer.box.y0 + layer.box.height() * (i + 1) / 4;
        piece.turns = layer.turns / 4;
        cut.layers.push_back(piece);
    }
    for (const auto ends : {design::Ends::Beyond, design::Ends::Walled}) {
        const Eigen::MatrixXd a = leakageMatrix(whole, ends).matrix, b = leakageMatrix(cut, ends).matrix;
        const Eigen::VectorXd turns = signedTurns(whole);
        Eigen::VectorXd joined = Eigen::VectorXd::Zero(9);  // one ampere through all pieces, balanced by layer 0
        joined.tail(4).setOnes();
        joined(0) = -turns(2) / turns(0);
        const double expected = lambda(a, turns, 0, 2) * turns(2) * turns(2);
        const Eigen::VectorXd linked = b * joined;
        EXPECT_NEAR(joined.dot(linked), expected, 1e-9 * expected);
    }
}

TEST(LeakageMatrix, OfRoundWireInFullLayersIsThatOfLineCurrents) {
    // Rows of round wires over the whole height: images in the walls continue the row without end, so the potential is
    // -1/2 ln[2 (cosh(2 pi x/p) - cos(2 pi y/p))] a wire (elementary); own surface: ln(2 pi r e^(-1/4) / p).
    constexpr double p = 0.25e-3, r = 0.1e-3, c = 0.3e-3, turns = 80;
    coil::CoilBuild build;
    build.tongue = build.stack = 50;  // so long a turn that its growth with x does not count
    build.windowWidth = 0.006;
    build.windowHeight = turns * p;
    for (const double x : {2e-3, 2e-3 + c}) {
        coil::Layer layer;
        layer.turns = turns;
        layer.box = {x - 0.12e-3, x + 0.12e-3, 0, build.windowHeight};
        layer.conductor.bare = 2 * r;
        layer.turnLength = 200;
        build.layers.push_back(layer);
    }
    const double self = -std::log(2 * pi * r / p) + 0.25, mutual = -std::log(2 * (std::cosh(2 * pi * c / p) - 1)) / 2;
    const double expected = mu0 / (2 * pi * turns) * 2 * (self - mutual) * 200;
    const double found = lambda(leakageMatrix(build, design::Ends::Walled).matrix, signedTurns(build), 0, 1);
    EXPECT_NEAR(found, expected, 5e-4 * expected);  // rows facing wire to wire: e^(-2 pi c/p) left out
    for (auto& layer : build.layers) layer.conductor.bare = 0;
    const double even = lambda(leakageMatrix(build, design::Ends::Walled).matrix, signedTurns(build), 0, 1);
    EXPECT_GT(expected / even, 1.05);
}

TEST(LeakageMatrix, OfStrandsSharesTheCurrent) {
    auto build = randomBuild(5, 2, false);
    for (auto& layer : build.layers) layer.conductor.strands = 2;
    // Two strands of the same thickness side by side are a row of twice as many wires with half the current each.
    auto twice = build;
    for (auto& layer : twice.layers) layer.conductor.strands = 1, layer.turns *= 2;
    for (auto& layer : build.layers) layer.sense = 1;
    for (auto& layer : twice.layers) layer.sense = 1;
    const auto a = leakageMatrix(build, design::Ends::Walled).matrix,
               b = leakageMatrix(twice, design::Ends::Walled).matrix;
    EXPECT_LT((4 * a - b).cwiseAbs().maxCoeff(), 1e-12 * b.cwiseAbs().maxCoeff());
}

TEST(LeakageMatrix, TakesTheTurnsGrowthIntoTheIntegralWhenWalled) {
    // Full-height thick coils: mu0/h integral of l(x) H^2 with H rising, level and falling.
    coil::CoilBuild build;
    build.tongue = 0.01, build.stack = 0.012, build.windowWidth = 0.007, build.windowHeight = 0.02,
    build.bobbinWall = 0.001;
    for (const auto& [from, to] : {std::pair{0.001, 0.0028}, std::pair{0.0031, 0.0062}}) {
        coil::Layer layer;
        layer.turns = 1;
        layer.box = {from, to, 0, 0.02};
        layer.turnLength = 0.044 + 0.008 + 2 * pi * (layer.box.middle() - 0.001);
        build.layers.push_back(layer);
    }
    double sum = 0;
    constexpr int n = 20000;
    for (int i = 0; i < n; ++i) {
        const double x = 0.007 * (i + 0.5) / n;
        const double field = std::clamp((x - 0.001) / 0.0018, 0.0, 1.0) - std::clamp((x - 0.0031) / 0.0031, 0.0, 1.0);
        sum += field * field * (0.052 + 2 * pi * (x - 0.001)) * 0.007 / n;
    }
    const double found = lambda(leakageMatrix(build, design::Ends::Walled).matrix, Eigen::Vector2d(1, 1), 0, 1);
    EXPECT_NEAR(found, mu0 / 0.02 * sum, 1e-6 * found);
}

TEST(LeakageMatrix, WeighsInsideAndOutsideByTheTurnsLengths) {
    auto plain = randomBuild(2, 4, false);
    for (auto& layer : plain.layers) layer.conductor.bare = 0, layer.box.y1 = 0.0228;
    const auto result = leakageMatrix(plain, design::Ends::Beyond);
    std::vector<CurrentBox> boxes;
    for (const auto& layer : plain.layers) boxes.push_back({layer.box, layer.turns});
    const Window w{plain.windowWidth, plain.windowHeight};
    const double in = pairLambda(windowMatrix(boxes, w, Surroundings::Closed))(0, 3);
    const double out = pairLambda(windowMatrix(boxes, w, Surroundings::Open))(0, 3);
    const double length = (plain.layers[0].turnLength + plain.layers[3].turnLength) / 2;
    const double expected = in * 2 * plain.stack + out * (length - 2 * plain.stack);
    EXPECT_NEAR(lambda(result.matrix, signedTurns(plain), 0, 3), expected, 1e-9 * expected);
}

TEST(LeakageMatrix, TurnsItsSignsWithTheSenseOfWinding) {
    auto build = randomBuild(4, 5, false);
    const auto before = leakageMatrix(build, design::Ends::Beyond).matrix;
    build.layers[1].sense = -build.layers[1].sense;
    const auto after = leakageMatrix(build, design::Ends::Beyond).matrix;
    EXPECT_DOUBLE_EQ(after(1, 3), -before(1, 3));
    EXPECT_DOUBLE_EQ(after(1, 1), before(1, 1));
    EXPECT_DOUBLE_EQ(after(0, 3), before(0, 3));
}

TEST(LeakageMatrix, OfACoilLargerThanItsWindowIsFiniteAndMarked) {
    auto build = randomBuild(7, 10, false);
    build.windowWidth = build.layers.back().box.x0;
    const auto result = leakageMatrix(build, design::Ends::Walled);
    EXPECT_FALSE(result.valid);
    EXPECT_NE(result.why.find("larger than the window"), std::string::npos) << result.why;
    EXPECT_TRUE(result.matrix.allFinite());
}

TEST(LeakageMatrix, OfNothingIsEmpty) {
    EXPECT_EQ(leakageMatrix({}, design::Ends::Beyond).matrix.size(), 0);
}

}  // namespace leakage_test
}  // namespace field
