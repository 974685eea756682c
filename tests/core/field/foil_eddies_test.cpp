// SPDX-License-Identifier: GPL-3.0-or-later
// Eddy currents in foil against closed forms: Dowell's factor, and a strip in a field across its face.
#include "field/foil_eddies.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <complex>
#include <numbers>

#include "coil/wire_resistance.h"
#include "field/leakage.h"
#include "field/winding_loss.h"

namespace field {
namespace foil_eddies_test {

using std::numbers::pi;
using Complex = std::complex<double>;
constexpr double mu0 = 4e-7 * pi;

coil::CoilBuild window(double width, double height) {
    coil::CoilBuild build;
    build.tongue = build.stack = 50;  // so long a turn that its growth with x does not count
    build.windowWidth = width;
    build.windowHeight = height;
    return build;
}

coil::Layer foil(double x, double thickness, double low, double high) {
    coil::Layer layer;
    layer.turns = 1;
    layer.box = {x, x + thickness, low, high};
    layer.conductor.foil = true;
    layer.conductor.bare = layer.conductor.overall = thickness;
    layer.turnLength = 200;
    layer.resistance20 = coil::conductorResistance(200, thickness * (high - low), 20);
    return layer;
}

/// Impedance of the branches at f with all eddy circuits eliminated, their direct-current resistance included.
Eigen::MatrixXcd impedance(const coil::CoilBuild& build, double frequency, design::Ends ends = design::Ends::Walled) {
    const auto eddies = foilEddies(build, ends, 1e6);
    const Complex jw(0, 2 * pi * frequency);
    Eigen::MatrixXcd loops = jw * eddies.inductance.cast<Complex>();
    loops.diagonal() += eddies.resistance.cast<Complex>();
    const Eigen::MatrixXcd mutual = jw * eddies.mutual.cast<Complex>();
    Eigen::MatrixXcd z = jw * eddies.leakage.cast<Complex>() - mutual * loops.partialPivLu().solve(mutual.transpose());
    for (std::size_t k = 0; k < build.layers.size(); ++k)
        z(Eigen::Index(k), Eigen::Index(k)) += build.layers[k].resistance20;
    return z;
}

struct FoilCase {
    double depths;  // thickness in skin depths at 20 kHz
    int layers;
};
class FoilOverTheWholeHeight : public testing::TestWithParam<FoilCase> {};

TEST_P(FoilOverTheWholeHeight, HasDowellsFactor) {
    const auto [depths, layers] = GetParam();
    constexpr double frequency = 20e3, height = 0.03;
    const double thickness = depths * skinDepth(frequency, coil::copperResistivity20);
    auto build = window(0.02, height);
    for (int k = 0; k < 2 * layers; ++k) build.layers.push_back(foil(1e-3 + k * 1.2 * thickness, thickness, 0, height));
    const Eigen::MatrixXcd z = impedance(build, frequency);
    Eigen::VectorXcd current = Eigen::VectorXcd::Ones(2 * layers);
    current.tail(layers) *= -1;
    const double loss = (current.transpose() * z * current)(0).real();
    const double direct = 2 * layers * build.layers[0].resistance20;
    const double expected = dowellFactor(depths, layers);
    EXPECT_NEAR(loss / direct, expected, 5e-3 * expected);
}

INSTANTIATE_TEST_SUITE_P(Depths, FoilOverTheWholeHeight,
                         testing::Values(FoilCase{0.3, 1}, FoilCase{0.3, 4}, FoilCase{1, 1}, FoilCase{1, 3},
                                         FoilCase{1.5, 2}, FoilCase{2, 1}, FoilCase{2, 3}));

TEST(FoilEddies, OfAShieldInAFieldAlongItAreThoseOfItsThickness) {
    // Between two windings over the whole height the field is even and along the foil: (b h)^2 R (2 xi tanh(xi/2)).
    constexpr double frequency = 200e3, height = 0.03, thickness = 50e-6;
    auto build = window(0.01, height);
    build.layers = {foil(1e-3, 1e-6, 0, height), foil(5e-3, 1e-6, 0, height)};
    coil::Foil shield;
    shield.box = {3e-3, 3e-3 + thickness, 0, height};
    shield.turnLength = 200;
    shield.conductor.foil = true;
    shield.conductor.bare = shield.conductor.overall = thickness;
    const auto lossOf = [&] {
        const Eigen::MatrixXcd z = impedance(build, frequency);
        return (z(0, 0) + z(1, 1) - z(0, 1) - z(1, 0)).real();
    };
    const double without = lossOf();
    build.foils = {shield};
    const Complex xi = Complex(1, 1) * thickness / skinDepth(frequency, coil::copperResistivity20);
    const double expected =
        coil::conductorResistance(200, thickness * height, 20) * (2.0 * xi * std::tanh(xi / 2.0)).real();
    EXPECT_NEAR(lossOf() - without, expected, 2e-2 * expected);
}

TEST(FoilEddies, OfAFoilAcrossTheFieldTakeTheClassicalLossAndThenScreenIt) {
    // Two windings side by side drive a field across a foil near the tongue. At low frequency the loss rises with the
    // square of frequency; far above, the foil's currents keep the field out and the inductance falls.
    auto build = window(0.008, 0.03);
    coil::Layer low = foil(2e-3, 4e-3, 1e-3, 14e-3), high = foil(2e-3, 4e-3, 16e-3, 29e-3);
    for (auto* layer : {&low, &high}) layer->conductor.foil = false;
    build.layers = {low, high};
    coil::Foil shield;
    shield.box = {1.2e-3, 1.225e-3, 1e-3, 29e-3};
    shield.turnLength = 200;
    shield.conductor.foil = true;
    shield.conductor.bare = shield.conductor.overall = 25e-6;
    build.foils = {shield};
    const auto seen = [&](double f) {
        const Eigen::MatrixXcd z = impedance(build, f);
        return z(0, 0) + z(1, 1) - z(0, 1) - z(1, 0);
    };
    const double copper = low.resistance20 + high.resistance20;
    EXPECT_NEAR((seen(200).real() - copper) / (seen(100).real() - copper), 4, 0.01);
    const double still = seen(10).imag() / 10, fast = seen(1e6).imag() / 1e6;
    EXPECT_LT(fast, 0.95 * still);
    EXPECT_GT(fast, 0);
    for (double f = 10, before = still; f < 1e6; f *= 2) {
        EXPECT_LE(seen(f).imag() / f, before * (1 + 1e-12)) << f;
        before = seen(f).imag() / f;
        EXPECT_GE(seen(f).real(), copper) << f;
    }
}

TEST(FoilEddies, OfADesignWithoutFoilAreNone) {
    auto build = window(0.008, 0.03);
    build.layers = {foil(2e-3, 1e-3, 1e-3, 14e-3), foil(4e-3, 1e-3, 1e-3, 29e-3)};
    for (auto& layer : build.layers) layer.conductor.foil = false;
    const auto eddies = foilEddies(build, design::Ends::Beyond, 1e6);
    EXPECT_EQ(eddies.resistance.size(), 0);
    EXPECT_EQ(eddies.leakage, leakageMatrix(build, design::Ends::Beyond).matrix);
}

}  // namespace foil_eddies_test
}  // namespace field
