// SPDX-License-Identifier: GPL-3.0-or-later
// A loop behind its sheet's eddy field against the same sheet stepped in time, and against a circuit solver's ladder.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/eddy_balance.h"
#include "reference_core.h"

namespace sheet_field_reference_test {

const nlohmann::json& reference() {
    static const nlohmann::json read = reference_core::numbersOf("sheet_field");
    return read;
}

double number(const char* key) {
    return reference().at(key).get<double>();
}

/// Harmonics 3, 5 and 7 of the core's voltage within 1 dB down to -100 dB.
void expectHarmonics(const char* rows, bool withLoop) {
    magnetics::CoreModel model = reference_core::coreOf(reference(), withLoop);
    model.blocks.front().thickness = number("thickness");
    model.blocks.front().resistivity = number("resistivity");
    const magnetics::CoreLoop loop(model);
    ASSERT_EQ(loop.hysteretic(), withLoop);
    const double turns = number("turns"), ohm = number("resistance");
    int compared = 0;
    for (const auto& row : reference().at(rows)) {
        const double frequency = row.at("frequency"), emf = row.at("emf");
        analysis::Surroundings around;
        for (int k = 0; k < 16; ++k)
            around.load.emplace_back(
                0, 2 * std::numbers::pi * k * frequency * model.area * turns * turns / ohm / model.pathLength);
        around.drive = turns * emf / std::numbers::sqrt2 / ohm / model.pathLength;
        const analysis::Cycle cycle = analysis::EddyBalance(loop, frequency).steadyCycle(loop.atRest(), around);
        ASSERT_TRUE(cycle.settled) << frequency << " Hz, " << emf << " V";
        for (int i = 0; i < 3; ++i) {
            const std::size_t k = static_cast<std::size_t>(2 * i + 3);
            const double found = 20 * std::log10(double(k) * std::abs(cycle.flux[k] / cycle.flux[1]));
            const double expected = row.at("h3_h5_h7_dB").at(static_cast<std::size_t>(i));
            if (expected < -100) continue;
            EXPECT_NEAR(found, expected, 1) << frequency << " Hz, " << emf << " V, harmonic " << k;
            ++compared;
        }
    }
    EXPECT_GE(compared, 6);
}

TEST(SheetFieldReference, WithHysteresisAgreesWithTimeStepping) {
    expectHarmonics("stepped", true);
}

TEST(SheetFieldReference, WithoutHysteresisAgreesWithALadderInACircuitSolver) {
    expectHarmonics("ngspice", false);
}

}  // namespace sheet_field_reference_test
