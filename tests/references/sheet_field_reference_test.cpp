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

/// The steady state of a row: a sine through a resistor and the turns.
analysis::Cycle cycleOf(const magnetics::CoreLoop& loop, const nlohmann::json& row) {
    const double turns = number("turns"), ohm = number("resistance"), path = number("path");
    const double frequency = row.at("frequency"), emf = row.at("emf");
    const double load = 2 * std::numbers::pi * frequency * number("area") * turns * turns / ohm / path;
    analysis::Surroundings around;
    for (int k = 0; k < 16; ++k) around.load.emplace_back(0, k * load);
    around.drive = turns * emf / std::numbers::sqrt2 / ohm / path;
    return analysis::EddyBalance(loop, frequency).steadyCycle(loop.atRest(), around);
}

/// Harmonics 3, 5 and 7 of the core's voltage within 1 dB down to -100 dB; how many were compared.
int compared(const analysis::Cycle& cycle, const nlohmann::json& row) {
    int count = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t k = 2 * i + 3;
        const double expected = row.at("h3_h5_h7_dB").at(i);
        if (expected < -100) continue;
        const double found = 20 * std::log10(static_cast<double>(k) * std::abs(cycle.flux[k] / cycle.flux[1]));
        EXPECT_NEAR(found, expected, 1) << row.at("frequency") << " Hz, " << row.at("emf") << " V, harmonic " << k;
        ++count;
    }
    return count;
}

void expectHarmonics(const char* rows, bool withLoop) {
    magnetics::CoreModel model = reference_core::coreOf(reference(), withLoop);
    model.blocks.front().thickness = number("thickness");
    model.blocks.front().resistivity = number("resistivity");
    const magnetics::CoreLoop loop(model);
    ASSERT_EQ(loop.hysteretic(), withLoop);
    int count = 0;
    for (const auto& row : reference().at(rows)) {
        const analysis::Cycle cycle = cycleOf(loop, row);
        ASSERT_TRUE(cycle.settled) << row;
        count += compared(cycle, row);
    }
    EXPECT_GE(count, 6);
}

TEST(SheetFieldReference, WithHysteresisAgreesWithTimeStepping) {
    expectHarmonics("stepped", true);
}

TEST(SheetFieldReference, WithoutHysteresisAgreesWithALadderInACircuitSolver) {
    expectHarmonics("ngspice", false);
}

}  // namespace sheet_field_reference_test
