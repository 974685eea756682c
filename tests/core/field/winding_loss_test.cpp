// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/winding_loss.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "field/bessel.h"
#include "field/window_field.h"

namespace field {
namespace winding_loss_test {

using std::numbers::pi;
using Complex = std::complex<double>;
constexpr double mu0 = 4e-7 * pi, copper = 1.7241e-8;

/// J_order(z) by its power series, in long double: good to |z| = 15 or so.
Complex besselSeries(Complex z, int order) {
    std::complex<long double> term = 1, sum = 0, half = std::complex<long double>(z) / 2.0L;
    for (int k = 1; k <= order; ++k) term *= half / static_cast<long double>(k);
    for (int k = 0; k < 100; ++k) {
        sum += term;
        term *= -half * half / static_cast<long double>((k + 1) * (k + 1 + order));
    }
    return Complex(sum);
}

TEST(BesselRatio, AgreesWithThePowerSeries) {
    for (const double t : {1e-3, 0.1, 0.7, 2.0, 5.0, 10.0}) {
        const Complex z = Complex(1, -1) * t, zero = besselSeries(z, 0);
        EXPECT_LT(std::abs(besselRatio10(z) * zero / besselSeries(z, 1) - 1.0), 1e-12) << t;
        EXPECT_LT(std::abs(besselRatio20(z) * zero / besselSeries(z, 2) - 1.0), 1e-12) << t;
    }
}

TEST(BesselRatio, PassesSmoothlyIntoItsAsymptoticSeries) {
    const Complex below = Complex(1, -1) * (79.999 / std::sqrt(2)), above = Complex(1, -1) * (80.001 / std::sqrt(2));
    const Complex slope = (besselRatio10(above) - besselRatio10(below)) / (above - below);
    // J1/J0 = r obeys r' = 1 - r/z + r^2.
    const Complex r = besselRatio10(below);
    EXPECT_LT(std::abs(slope - (1.0 - r / below + r * r)), 1e-8);
    EXPECT_LT(std::abs(besselRatio20(above) - besselRatio20(below)), 1e-5);
}

TEST(RoundWireImpedanceFactor, HasItsLimits) {
    EXPECT_DOUBLE_EQ(roundWireImpedanceFactor(0).real(), 1);
    EXPECT_NEAR(roundWireImpedanceFactor(0.2).real() - 1, std::pow(0.2, 4) / 768, 1e-9);
    EXPECT_NEAR(roundWireImpedanceFactor(0.2).imag(), 0.04 / 16, 1e-7);
    EXPECT_NEAR(roundWireImpedanceFactor(500).real(), 125.25, 1e-3);  // d/4delta + 1/4
}

TEST(TransverseFieldFactor, HasItsLimits) {
    const double d = 0.1e-3, low = 1e4, w = 2 * pi * low;
    const double classical = pi * std::pow(d / 2, 4) * std::pow(w * mu0, 2) / (4 * copper);
    EXPECT_NEAR(transverseFieldFactor(low, d, copper).real(), classical, 1e-5 * classical);
    EXPECT_LT(transverseFieldFactor(low, d, copper).imag(), 0);
    // Field driven out: twice the cylinder's own share of j w mu0 is missing.
    const double high = 1e12, displaced = -2 * pi * high * mu0 * 2 * pi * d * d / 4;
    EXPECT_NEAR(transverseFieldFactor(high, d, copper).imag(), displaced, 0.01 * std::abs(displaced));
}

TEST(DowellFactor, OfThinLayersIsItsSeries) {
    for (const int m : {1, 4, 9}) EXPECT_NEAR(dowellFactor(0.1, m) - 1, (5.0 * m * m - 1) / 45 * 1e-4, 2e-7 * m * m);
    EXPECT_DOUBLE_EQ(dowellFactor(0, 7), 1);
}

/// i^T form i.
double quadratic(const Eigen::MatrixXd& form, const Eigen::VectorXd& current) {
    const Eigen::VectorXd product = form * current;
    return current.dot(product);
}

/// m layers over the whole height in series, and a thick return coil beyond.
coil::CoilBuild fullLayers(int m, double turns, double d) {
    coil::CoilBuild build;
    build.tongue = build.stack = 0.02;
    build.windowWidth = 0.012;
    build.windowHeight = 0.02;
    build.bobbinWall = 0.001;
    for (int k = 0; k <= m; ++k) {
        coil::Layer layer;
        layer.turns = k < m ? turns : m * turns;
        layer.sense = k < m ? 1 : -1;
        layer.conductor.bare = d;
        const double x = k < m ? 0.001 + k * 1.2 * d : 0.011;
        layer.box = {x, x + 1.1 * d, 0, 0.02};
        layer.turnLength = 0.088 + 2 * pi * (layer.box.middle() - 0.001);
        build.layers.push_back(layer);
    }
    return build;
}

TEST(ProximityForm, OfFullLayersIsTheFieldBetweenThem) {
    const auto build = fullLayers(5, 60, 0.3e-3);
    const auto form = proximityForm(build, design::Ends::Walled);
    const Eigen::VectorXd ampere = Eigen::VectorXd::Ones(6);
    for (int k = 0; k < 5; ++k) {
        const double field = (k + 0.5) * 60 / 0.02;  // ampere-turns enclosed at the layer's middle, over the height
        EXPECT_NEAR(quadratic(form.ofLayer(static_cast<std::size_t>(k)), ampere), field * field, 1e-9 * field * field);
        EXPECT_DOUBLE_EQ(form.wireLength[static_cast<std::size_t>(k)], 60 * build.layers[std::size_t(k)].turnLength);
    }
}

TEST(ProximityForm, GivesDowellsGrowthWithLayersTimesThreeOverPi) {
    // Dowell squares the wire and widens it to fill the layer; at low frequency its part that grows with m^2 - 1 is
    // then pi/3 of that of round wire in the same field (elementary: x^4/9 against x^4/(3 pi)).
    constexpr double d = 0.3e-3, turns = 60, f = 3000;
    const double porosity = turns * d * std::sqrt(pi / 4) / 0.02;
    const double x = d * std::sqrt(pi / 4) * std::sqrt(porosity) / skinDepth(f, copper);
    const auto factor = [&](int m) {
        const auto build = fullLayers(m, turns, d);
        const auto form = proximityForm(build, design::Ends::Walled);
        const Eigen::VectorXd ampere = Eigen::VectorXd::Ones(m + 1);
        const double direct = copper / (pi * d * d / 4), loss = transverseFieldFactor(f, d, copper).real();
        double sum = 0;
        for (std::size_t k = 0; k < static_cast<std::size_t>(m); ++k)
            sum += loss * quadratic(form.ofLayer(k), ampere) / direct;
        return 1 + sum / m;
    };
    const double round = factor(8) - factor(2), dowell = dowellFactor(x, 8) - dowellFactor(x, 2);
    EXPECT_NEAR(round / dowell, 3 / pi, 2e-3);
}

TEST(ProximityForm, IsPositiveAndFollowsTheSense) {
    auto build = fullLayers(6, 40, 0.2e-3);
    for (std::size_t k = 0; k < build.layers.size(); ++k) build.layers[k].box.y1 = 0.019 - 0.001 * double(k);
    const auto before = proximityForm(build, design::Ends::Beyond);
    build.layers[2].sense = -1;
    const auto after = proximityForm(build, design::Ends::Beyond);
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const Eigen::MatrixXd p = before.ofLayer(k);
        EXPECT_EQ(p, p.transpose());
        const Eigen::VectorXd values = Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(p).eigenvalues();
        EXPECT_GT(values(0), -1e-12 * values(values.size() - 1));
        EXPECT_NEAR(after.ofLayer(k)(2, 4), -p(2, 4), 1e-9 * p.cwiseAbs().maxCoeff());
        EXPECT_NEAR(after.ofLayer(k)(2, 2), p(2, 2), 1e-9 * p.cwiseAbs().maxCoeff());
    }
}

TEST(ProximityForm, OfFoilIsZeroAndOfABodySpansItsThickness) {
    auto build = fullLayers(2, 40, 0.2e-3);
    build.layers[0].conductor.foil = true;
    build.layers[1].random = true;
    build.layers[1].box.x1 = build.layers[1].box.x0 + 0.003;
    const auto form = proximityForm(build, design::Ends::Walled);
    EXPECT_EQ(form.ofLayer(0).cwiseAbs().maxCoeff(), 0);
    const Eigen::VectorXd own = Eigen::Vector3d(0, 1, 0.5);  // its ampere-turns return in the outer coil
    const double full = 40 / 0.02;  // field rises linearly through the body: a third of the square at its edge
    EXPECT_NEAR(quadratic(form.ofLayer(1), own), full * full / 3, 0.02 * full * full / 3);
}

TEST(ProximityForm, IsWeakerBeyondTheWindowForCoilsSideBySide) {
    coil::CoilBuild build;
    build.tongue = build.stack = 0.01;
    build.windowWidth = 0.0042, build.windowHeight = 0.018, build.bobbinWall = 0.0008;
    for (int k = 0; k < 2; ++k) {
        coil::Layer layer;
        layer.turns = 100;
        layer.random = true;
        layer.conductor.bare = 0.1e-3;
        layer.box = {0.001, 0.003, k == 0 ? 0.001 : 0.0096, k == 0 ? 0.0084 : 0.017};
        layer.turnLength = 0.055;
        build.layers.push_back(layer);
    }
    const Eigen::VectorXd balanced = Eigen::Vector2d(1, -1);
    const auto loss = [&](design::Ends ends) { return quadratic(proximityForm(build, ends).ofLayer(0), balanced); };
    EXPECT_LT(loss(design::Ends::Beyond), 0.9 * loss(design::Ends::Walled));
    EXPECT_GT(loss(design::Ends::Beyond), 0.3 * loss(design::Ends::Walled));
}

/// Integral of H along a rectangle, counter-clockwise, from fields at given points.
template <class Field>
double circulation(const coil::Box& path, Field field) {
    constexpr int n = 400;
    double sum = 0;
    for (int i = 0; i < n; ++i) {
        const double s = (i + 0.5) / n, x = path.x0 + s * path.width(), y = path.y0 + s * path.height();
        sum += (field(x, path.y0).first - field(x, path.y1).first) * path.width() / n;
        sum += (field(path.x1, y).second - field(path.x0, y).second) * path.height() / n;
    }
    return sum;
}

TEST(OpenField, ObeysAmperesLaw) {
    const std::vector<CurrentBox> boxes{{{0.001, 0.003, 0.002, 0.009}, 1}};
    const auto field = [&](double x, double y) {
        const Eigen::MatrixXd h = openField(boxes, x, {y});
        return std::pair(h(0, 0), h(1, 0));
    };
    EXPECT_NEAR(circulation({0.0005, 0.0041, 0.001, 0.012}, field), 1, 1e-4);
    EXPECT_NEAR(circulation({0.002, 0.0041, 0.001, 0.012}, field), 0.5, 1e-3);  // through the middle of the box
    EXPECT_NEAR(circulation({0.0035, 0.0041, 0.001, 0.012}, field), 0, 1e-4);
    EXPECT_NEAR(field(1e-12, 0.004).second, 0, 1e-6);  // iron surface: no field along it
}

TEST(WindowField, ObeysAmperesLawWithTheReturnSpreadEvenly) {
    const Window w{0.006, 0.012};
    const std::vector<CurrentBox> boxes{{{0.001, 0.003, 0.002, 0.009}, 1}};
    const WindowField series(boxes, w, 200);
    const auto field = [&](double x, double y) {
        const Eigen::MatrixXd h = series.at(x, {y});
        return std::pair(h(0, 0), h(1, 0));
    };
    const coil::Box path{0.0005, 0.0041, 0.001, 0.011};
    EXPECT_NEAR(circulation(path, field), 1 - path.width() * path.height() / (w.width * w.height), 1e-3);
    EXPECT_NEAR(field(0, 0.004).second, 0, 1e-6);
    EXPECT_NEAR(field(w.width, 0.004).second, 0, 1e-6);
}

/// Boxes about the window's middle are summed over every second mode and on half of the heights; their halves are not.
TEST(WindowField, OfABoxIsTheMeanOfItsHalves) {
    const Window w{0.006, 0.012};
    const auto part = [](double x0, double y0, double y1) { return CurrentBox{{x0, x0 + 0.001, y0, y1}, 1}; };
    const WindowField whole({part(0.001, 0.002, 0.010), part(0.003, 0.001, 0.011), part(0.003, 0.001, 0.005)}, w, 120);
    const WindowField parted({part(0.001, 0.002, 0.006), part(0.001, 0.006, 0.010), part(0.003, 0.001, 0.006),
                              part(0.003, 0.006, 0.011), part(0.003, 0.001, 0.003), part(0.003, 0.003, 0.005)},
                             w, 120);
    for (const std::vector<double>& y :
         {std::vector<double>{0.003, 0.006, 0.009}, {0.002, 0.005, 0.007, 0.010}, {0.002, 0.004}, {0.006}})
        for (const double x : {0.0, 0.0004, 0.0015, 0.0025, 0.0031, 0.0036, 0.0055, 0.006}) {
            const Eigen::MatrixXd one = whole.at(x, y), halves = parted.at(x, y);
            ASSERT_EQ(one.rows(), static_cast<Eigen::Index>(2 * y.size()));
            for (Eigen::Index j = 0; j < 3; ++j) {
                const Eigen::VectorXd mean = (halves.col(2 * j) + halves.col(2 * j + 1)) / 2;
                EXPECT_LT((one.col(j) - mean).cwiseAbs().maxCoeff(), 1e-4 * halves.cwiseAbs().maxCoeff())
                    << "x " << x << ", box " << j << ", heights " << y.size();
            }
        }
}

}  // namespace winding_loss_test
}  // namespace field
