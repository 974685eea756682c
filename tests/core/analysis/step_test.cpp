// SPDX-License-Identifier: GPL-3.0-or-later
// Step and square wave of networks whose answer is known in closed form.
#include "analysis/step.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace step_test {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;

TEST(SineIntegral, OfTabulatedArguments) {  // M. Abramowitz and I. Stegun, table 5.1 (from memory)
    for (const auto& [x, expected] : {std::pair{0.5, 0.4931074180},
                                      {1.0, 0.9460830704},
                                      {2.0, 1.6054129768},
                                      {5.0, 1.5499312449},
                                      {10.0, 1.6583475942}})
        EXPECT_NEAR(analysis::sineIntegral(x, std::sin(x), std::cos(x)), expected, 2e-6) << x;
}

TEST(StepResponse, OfAHighAndALowPass) {
    const double low = 5, high = 60e3;  // Hz
    const auto transfer = [&](double f) { return Complex(0, f / low) / Complex(1, f / low) / Complex(1, f / high); };
    const analysis::StepResponse step([&](double f) { return transfer(f).real(); }, 0.1, 1e6);
    const double a = 2 * pi * low, b = 2 * pi * high;
    for (const double t : {1e-6, 4e-6, 2e-5, 3e-4, 5e-3, 0.04, 0.3})
        EXPECT_NEAR(step.at(t), b / (b - a) * (std::exp(-a * t) - std::exp(-b * t)), 2e-3) << t;
}

TEST(StepResponse, RingsAsAResonanceDoes) {
    const double f0 = 80e3, damping = 0.15;
    const analysis::StepResponse step(
        [&](double f) { return (1.0 / Complex(1 - f / f0 * f / f0, 2 * damping * f / f0)).real(); }, 0.1, 1e6);
    const double w = 2 * pi * f0, ringing = w * std::sqrt(1 - damping * damping);
    for (double t = 2e-6; t < 5e-5; t += 1.7e-6) {
        const double expected =
            1 - std::exp(-damping * w * t) * (std::cos(ringing * t) + damping * w / ringing * std::sin(ringing * t));
        EXPECT_NEAR(step.at(t), expected, 2e-3) << t;
    }
}

TEST(SquareResponse, DroopsThroughAHighPass) {
    const double corner = 4, frequency = 100;
    const auto response = analysis::squareResponse(
        [&](double f) { return Complex(0, f / corner) / Complex(1, f / corner); }, frequency, 1e6, 512);
    const double decay = std::exp(-pi * corner / frequency);  // over half a period
    const double start = 2 / (1 + decay);
    EXPECT_NEAR(response[128], start * std::sqrt(decay), 1e-3);
    EXPECT_NEAR(response[250], start * std::pow(decay, 250.0 / 256), 1e-3);
    EXPECT_NEAR(response[128 + 256], -response[128], 1e-12);
}

}  // namespace step_test
