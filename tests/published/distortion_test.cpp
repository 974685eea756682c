// SPDX-License-Identifier: GPL-3.0-or-later
// Rayleigh's loop and the harmonics that it makes, through the program's own balance.
#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <fstream>
#include <numbers>
#include <sstream>

#include "analysis/harmonic_balance.h"
#include "magnetics/core_loop.h"
#include "magnetics/permeability.h"

namespace distortion_test {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;

/// A closed path of 79 % nickel sheets: mu_i 20 000 and nu 20 000 m/A, as rows F-RY2 and F-ETA have them.
magnetics::CoreModel rowCore() {
    std::ostringstream text;
    text << std::ifstream(COILWRIGHT_SOURCE_DIR "/resources/alloys.json").rdbuf();
    const catalog::Alloy alloy = catalog::load({{"alloys.json", text.str()}}).alloys.at("nickel-80-standard");
    magnetics::CoreModel core;
    core.area = 1e-4;
    core.pathLength = 0.1;
    magnetics::StackBlock block;
    block.initialPermeability = alloy.initialPermeability;
    block.rayleigh = alloy.rayleigh;
    block.coercivity = alloy.coercivity;
    block.remanence = alloy.remanence;
    block.saturation = alloy.saturation;
    block.curve = alloy.curve;
    core.blocks = {block};
    return core;
}

/// tan delta_h = (4 / 3 pi) nu H / (mu_i + nu H): Rayleigh's loop, IEC 60050-221 (seen), and Fourier (derived).
double lossAngle(double field) {
    return 4 / (3 * pi) * field / (1 + field);
}

/// The core, N turns, fed through a resistor of `ratio` = w L / R at a peak field of about `field`.
analysis::Cycle fed(double ratio, double field) {
    const magnetics::CoreModel core = rowCore();
    const magnetics::CoreLoop loop(core);
    analysis::Surroundings around;
    around.load.resize(16);
    for (int k = 0; k < 16; ++k) around.load[static_cast<std::size_t>(k)] = Complex(0, k * ratio / loop.initialSlope());
    around.drive = field / 2 * Complex(1, ratio);
    return analysis::steadyCycle(loop, loop.atRest(), around, {}, 512);
}

/// Voltage of harmonic k is k w times its flux.
double voltageRatio(const analysis::Cycle& cycle, int k) {
    return k * std::abs(cycle.flux[static_cast<std::size_t>(k)] / cycle.flux[1]);
}

TEST(PublishedRayleigh, LossAngleAndThirdHarmonicOfTheRow) {  // F-RY2, derived: H 0.1 A/m
    EXPECT_NEAR(lossAngle(0.1), 0.038583017, 1e-9);
    EXPECT_NEAR(0.6 * lossAngle(0.1), 0.023149810, 1e-9);
}

/// E3/E1 = 0.6 tan delta_h at sinusoidal current: E. Peterson, Bell System Technical Journal 7 (1928), re-derived.
TEST(PublishedPeterson, ThirdHarmonicOfVoltageAtSinusoidalCurrent) {
    for (const double field : {1e-3, 3e-3, 0.01}) {
        const analysis::Cycle cycle = fed(1e-3, field);
        ASSERT_TRUE(cycle.settled);
        EXPECT_NEAR(voltageRatio(cycle, 3) / (0.6 * lossAngle(field)), 1, 0.01) << field;
    }
}

/// I3/I1 = 0.2 tan delta_h at sinusoidal voltage (derived from Rayleigh's loop).
TEST(PublishedPeterson, ThirdHarmonicOfCurrentAtSinusoidalVoltage) {
    for (const double field : {1e-3, 3e-3, 0.01}) {
        const analysis::Cycle cycle = fed(3000, field);
        ASSERT_TRUE(cycle.settled);
        EXPECT_NEAR(std::abs(cycle.field[3] / cycle.field[1]) / (0.2 * lossAngle(field)), 1, 0.01) << field;
    }
}

/// B5/B3 = 1/7 on any Rayleigh loop: F-RY4, derived.
TEST(PublishedRayleigh, FifthHarmonicIsASeventhOfTheThird) {
    const analysis::Cycle cycle = fed(1e-3, 3e-3);
    EXPECT_NEAR(std::abs(cycle.flux[5] / cycle.flux[3]), 1.0 / 7, 0.01 / 7);
}

/// V3/V1 = 0.6 tan delta_h / sqrt(1 + (3 w L / R)^2): IEC 60050-221, circuit correction (seen); F-D1 to F-D10.
TEST(PublishedPeterson, CircuitCorrectionOfTheThirdHarmonic) {
    for (const double ratio : {1.0, 2.0, 5.0, 10.0}) {
        const analysis::Cycle cycle = fed(ratio, 1e-3);
        ASSERT_TRUE(cycle.settled);
        const double field = 2 * std::abs(cycle.field[1]);
        const double expected = 0.6 * lossAngle(field) / std::sqrt(1 + 9 * ratio * ratio);
        EXPECT_NEAR(voltageRatio(cycle, 3) / expected, 1, 0.01) << ratio;
    }
}

/// Loss (4/3) mu0 nu H^3 a cycle: F-RY2 prints 3.351032e-5 J/m3 at 0.1 A/m (derived).
TEST(PublishedRayleigh, LossOfACycle) {
    EXPECT_NEAR(4.0 / 3 * magnetics::mu0 * 20000 * 1e-3, 3.351032e-5, 1e-11);
    const analysis::Cycle cycle = fed(1e-3, 0.01);
    const double field = 2 * std::abs(cycle.field[1]);
    EXPECT_NEAR(
        magnetics::loopArea(cycle.fields, cycle.fluxes) / (4.0 / 3 * magnetics::mu0 * 20000 * field * field * field), 1,
        0.01);
}

}  // namespace distortion_test
