// SPDX-License-Identifier: GPL-3.0-or-later
// A core fed through a resistor, in time: closed forms, saturation, energy and direct field.
#include "analysis/core_in_time.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/answer.h"
#include "magnetics/permeability.h"

namespace core_in_time_test {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;
constexpr double turns = 500, area = 1e-4, path = 0.1, ohm = 100;
constexpr double permeability = 5000;
constexpr double slope = magnetics::mu0 * permeability;             // T per A/m
constexpr double inductance = turns * turns * slope * area / path;  // H

/// A winding behind a resistor; nothing above a megahertz. The output is the core's voltage.
analysis::CoreNetwork network() {
    const std::vector<double> frequencies = analysis::logarithmicGrid(1, 300e3, 80);
    std::vector<analysis::AroundCore> around;
    for (const double f : frequencies) {
        const Complex low = 1.0 / Complex(1, f / 1e6);
        around.push_back({low / turns, low * ohm / (turns * turns), low, low * ohm / turns, 0.0, low / turns});
    }
    return {frequencies, around, area, path};
}

magnetics::CoreModel core() {
    magnetics::CoreModel model;
    model.area = area;
    model.pathLength = path;
    magnetics::StackBlock block;
    block.initialPermeability = permeability;
    block.saturation = 1.2;
    block.rayleigh = 20000;
    block.coercivity = 5;
    for (const double field : {0.0, 0.1, 0.3, 1.0, 3.0, 6.0, 10.0, 30.0, 100.0, 1000.0})
        block.curve.push_back(
            {field, 1.2 * std::tanh(slope * field * (1 + 4 * field / (field + 6)) / 1.2) + 1e-5 * field});
    model.blocks = {block};
    return model;
}

TEST(CoreRun, ALinearCoreTakesCurrentAsAnInductorDoes) {
    const auto around = network();
    analysis::CoreRun<analysis::LinearInTime> run(around, analysis::LinearInTime(slope), 0, 2);
    const double tau = inductance / ohm, step = tau / 50;
    for (int n = 1; n <= 200; ++n) {
        run.go(step, 2, 2);
        const double there = std::exp(-n * step / tau);
        EXPECT_NEAR(run.current() / turns, 2 / ohm * (1 - there), 2e-4 * 2 / ohm);
        EXPECT_NEAR(run.output(), 2 * there, 2e-3);
        EXPECT_NEAR(run.source(), run.current() / turns, 1e-5);
    }
}

/// The trapezoidal rule alone would swing between 0 and twice the current for ever.
TEST(CoreRun, ASaturatedCoreSettlesWithoutSwinging) {
    const magnetics::CoreLoop loop(core());
    const auto around = network();
    analysis::CoreRun<analysis::LoopInTime> run(around, {loop, loop.atRest()}, 0, 10);
    double before = 0;
    for (int n = 0; n < 300; ++n) {
        run.go(2e-4, 10, 10);  // saturated after some 6 ms, the time constant there some 1 us
        EXPECT_GE(run.current(), before * (1 - 1e-3));
        before = run.current();
    }
    EXPECT_NEAR(run.current() / turns, 0.1, 1e-4);
    EXPECT_LT(run.flux(), 1.3);
}

/// A cycle's energy from the source goes into the resistor and into the loop.
TEST(CoreRun, EnergyIsAccountedFor) {
    constexpr int steps = 400;
    const magnetics::CoreLoop loop(core());
    const auto around = network();
    const double peak = 6;
    analysis::CoreRun<analysis::LoopInTime> run(around, {loop, loop.atRest()}, 0, peak);
    const auto emf = [&](int n) { return peak * std::cos(2 * pi * n / steps); };
    double given = 0, heat = 0;
    std::vector<double> fields, fluxes;
    for (int n = 0; n < 20 * steps; ++n) {
        const double i0 = run.current() / turns;
        run.go(0.05 / steps, emf(n), emf(n + 1));
        if (n < 19 * steps) continue;
        const double i1 = run.current() / turns, h = 0.05 / steps;
        given += h / 6 * (emf(n) * (2 * i0 + i1) + emf(n + 1) * (i0 + 2 * i1));
        heat += h / 3 * ohm * (i0 * i0 + i0 * i1 + i1 * i1);
        fields.push_back(run.field());
        fluxes.push_back(run.flux());
    }
    const double lost = magnetics::loopArea(fields, fluxes) * area * path;
    EXPECT_GT(lost, 0.05 * given);
    EXPECT_NEAR((heat + lost) / given, 1, 5e-3);
}

TEST(CoreRun, StandsStillInItsDirectField) {
    const magnetics::CoreLoop loop(core());
    const auto around = network();
    analysis::CoreRun<analysis::LoopInTime> run(around, {loop, loop.atRest()}, 8, 1);
    const double resting = run.flux();
    EXPECT_GT(resting, 0.05);
    for (int n = 0; n < 20; ++n) run.go(1e-3, 0, 0);
    EXPECT_NEAR(run.flux(), resting, 1e-9);
    EXPECT_NEAR(run.field(), 8, 1e-6);
}

}  // namespace core_in_time_test
