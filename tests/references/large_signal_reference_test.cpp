// SPDX-License-Identifier: GPL-3.0-or-later
// Harmonic balance against the same circuit stepped in time: plays one by one, and a circuit solver without plays.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "analysis/harmonic_balance.h"
#include "magnetics/permeability.h"
#include "reference_core.h"

namespace large_signal_reference_test {

const nlohmann::json& reference() {
    static const nlohmann::json read = reference_core::numbersOf("large_signal");
    return read;
}

double number(const char* key) {
    return reference().at(key).get<double>();
}

magnetics::CoreModel core(bool withLoop) {
    return reference_core::coreOf(reference(), withLoop);
}

/// Harmonics 3, 5 and 7 of the core's voltage within 1 dB down to -80 dB.
void expectHarmonics(const char* rows, bool withLoop) {
    const magnetics::CoreModel model = core(withLoop);
    const magnetics::CoreLoop loop(model);
    ASSERT_EQ(loop.hysteretic(), withLoop);
    const double turns = number("turns"), ohm = number("resistance"), w = 2 * std::numbers::pi * number("frequency");
    analysis::Surroundings around;
    for (int k = 0; k < 64; ++k)
        around.load.emplace_back(0, k * w * model.area * turns * turns / ohm / model.pathLength);
    for (const auto& row : reference().at(rows)) {
        const double emf = row.at("emf");
        around.drive = turns * emf / std::numbers::sqrt2 / ohm / model.pathLength;
        const analysis::Cycle cycle = analysis::steadyCycle(loop, loop.atRest(), around, {}, 512);
        ASSERT_TRUE(cycle.settled) << emf;
        for (int i = 0; i < 3; ++i) {
            const std::size_t k = static_cast<std::size_t>(2 * i + 3);
            const double found = 20 * std::log10(double(k) * std::abs(cycle.flux[k] / cycle.flux[1]));
            const double expected = row.at("h3_h5_h7_dB").at(static_cast<std::size_t>(i));
            if (expected < -80) continue;
            EXPECT_NEAR(found, expected, 1) << emf << " V, harmonic " << k;
        }
    }
}

TEST(LargeSignalReference, WithHysteresisAgreesWithTimeStepping) {
    expectHarmonics("stepped", true);
}

TEST(LargeSignalReference, WithoutHysteresisAgreesWithACircuitSolver) {
    expectHarmonics("ngspice", false);
}

}  // namespace large_signal_reference_test
