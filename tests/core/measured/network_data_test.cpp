// SPDX-License-Identifier: GPL-3.0-or-later
// Network parameters of circuits whose impedance is known, in all five kinds, and under a hook-up.
#include "measured/network_data.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "measured/terminated.h"
#include "units/fault.h"

namespace network_data_test {

using measured::Complex;
using measured::NetworkData;
using measured::Parameter;

/// A tee of 10 ohm and 30 ohm in series and 20 ohm j across: Z = [10 + 20j, 20j; 20j, 30 + 20j].
const Complex z11(10, 20), z12(0, 20), z22(30, 20), determinant = z11 * z22 - z12 * z12;

NetworkData tee(Parameter parameter) {
    NetworkData data{parameter, 2, {1000}, {}, {50, 50}, {}};
    switch (parameter) {
        case Parameter::Z:
            data.values = {{z11, z12, z12, z22}};
            break;
        case Parameter::Y:
            data.values = {{z22 / determinant, -z12 / determinant, -z12 / determinant, z11 / determinant}};
            break;
        case Parameter::H:
            data.values = {{determinant / z22, z12 / z22, -z12 / z22, 1.0 / z22}};
            break;
        case Parameter::G:
            data.values = {{1.0 / z11, -z12 / z11, z12 / z11, determinant / z11}};
            break;
        case Parameter::S: {
            // By the elements' formulas for one resistance (D. Frickey, IEEE Trans. MTT 42 (1994) 205, from memory).
            const Complex d = (z11 + 50.0) * (z22 + 50.0) - z12 * z12;
            data.values = {{((z11 - 50.0) * (z22 + 50.0) - z12 * z12) / d, 100.0 * z12 / d, 100.0 * z12 / d,
                            ((z11 + 50.0) * (z22 - 50.0) - z12 * z12) / d}};
        }
    }
    return data;
}

design::HookUp hookUp(double source, double load) {
    design::HookUp made;
    made.name = "normal";
    design::PortUse in, out;
    in.port = "in";
    in.role = design::Role::Drive;
    in.through = design::Branch{source, 0, 0};
    out.port = "out";
    out.role = design::Role::Observe;
    out.through = design::Branch{load, 0, 0};
    made.ports = {in, out};
    return made;
}

class EveryKind : public testing::TestWithParam<Parameter> {};

TEST_P(EveryKind, IsTheSameTee) {
    const NetworkData data = tee(GetParam());
    const auto z = measured::impedanceParameters(data, 0);
    const std::vector<Complex> wanted{z11, z12, z12, z22};
    for (std::size_t k = 0; k < 4; ++k) EXPECT_NEAR(std::abs(z[k] - wanted[k]), 0, 1e-12);
    // Divider: source 600 ohm, load 1000 ohm, by the tee's branches.
    const Complex loaded = 1.0 / (1.0 / z12 + 1.0 / 1030.0), into = 10.0 + loaded;
    const Complex out = loaded / (610.0 + loaded) * (1000.0 / 1030.0);
    const auto unit = measured::terminated(data, hookUp(600, 1000), "", "unit.s2p");
    ASSERT_EQ(unit.curves.size(), 4U);
    EXPECT_NEAR(unit.curves[0].value[0], 20 * std::log10(std::abs(out)), 1e-10);
    EXPECT_NEAR(unit.curves[1].value[0], std::arg(out) * 180 / std::numbers::pi, 1e-9);
    EXPECT_NEAR(unit.curves[2].value[0], std::abs(into), 1e-9);
    EXPECT_NEAR(unit.curves[3].value[0], std::arg(into) * 180 / std::numbers::pi, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Kinds, EveryKind,
                         testing::Values(Parameter::S, Parameter::Y, Parameter::Z, Parameter::H, Parameter::G));

TEST(NetworkData, APartInSeriesHasNoImpedanceParametersAndYetATransfer) {
    // 100 ohm between two ports of 50 ohm: S11 = 100 / 200, S21 = 100 / 200.
    const NetworkData data{Parameter::S, 2, {1000}, {{0.5, 0.5, 0.5, 0.5}}, {50, 50}, {}};
    EXPECT_THROW((void)measured::impedanceParameters(data, 0), std::domain_error);
    const auto unit = measured::terminated(data, hookUp(50, 150), "out", "unit.s2p");
    EXPECT_NEAR(unit.curves[0].value[0], 20 * std::log10(150.0 / 300), 1e-12);
    EXPECT_NEAR(unit.curves[2].value[0], 150, 1e-9) << "into the port named out: 100 ohm and the source";
}

TEST(NetworkData, ReferencesMayDiffer) {
    // A straight wire between 50 and 200 ohm: S11 = (200 - 50) / 250, S21 = 2 sqrt(50 200) / 250.
    const NetworkData data{Parameter::S, 2, {1000}, {{0.6, 0.8, 0.8, -0.6}}, {50, 200}, {}};
    const auto unit = measured::terminated(data, hookUp(100, 300), "", "unit.s2p");
    EXPECT_NEAR(unit.curves[0].value[0], 20 * std::log10(0.75), 1e-12);
    EXPECT_NEAR(unit.curves[2].value[0], 300, 1e-9);
}

TEST(NetworkData, OpenPortsPartsAcrossAndFrequencyZero) {
    NetworkData data = tee(Parameter::Z);
    data.frequencies = {0, 1000};
    data.values.push_back(data.values.front());
    design::HookUp open = hookUp(600, 1);
    open.ports[1].through.reset();
    open.ports[1].across = {design::Branch{1000, 0, 0}};
    const auto across = measured::terminated(data, open, "", "unit.s2p");
    ASSERT_EQ(across.curves[0].frequency, std::vector<double>{1000});
    const auto through = measured::terminated(data, hookUp(600, 1000), "", "unit.s2p");
    EXPECT_NEAR(across.curves[0].value[0], through.curves[0].value[0], 1e-12);
    const auto seen = measured::terminated(data, open, "out", "unit.s2p");
    const Complex z = 30.0 + 1.0 / (1.0 / z12 + 1.0 / 610.0);
    EXPECT_NEAR(seen.curves[2].value[0], std::abs(z), 1e-9);
}

TEST(NetworkData, PortsThatDoNotFitAreRefused) {
    const auto said = [](const NetworkData& data, const std::string& port) {
        try {
            (void)measured::terminated(data, hookUp(1, 1), port, "unit.s3p");
        } catch (const units::BadInput& bad) {
            return std::string(bad.what());
        }
        return std::string("terminated");
    };
    NetworkData three{Parameter::S, 3, {1}, {std::vector<Complex>(9)}, {50, 50, 50}, {}};
    EXPECT_EQ(said(three, ""),
              "unit.s3p: found 3 ports; allowed is 2 ports, those of hook-up normal, balanced ones "
              "twice.");
    EXPECT_EQ(said(tee(Parameter::S), "side"), "unit.s3p: found asked for port \"side\"; allowed is one of in, out.");
}

}  // namespace network_data_test
