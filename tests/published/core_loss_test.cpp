// SPDX-License-Identifier: GPL-3.0-or-later
// Eddy loss of the stack, as the network carries it, against the classical loss and its skin-effect correction.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <ostream>

#include "magnetics/permeability.h"
#include "magnetics/stack.h"

namespace core_loss_test {

void expectRelative(double found, double expected, double tolerance) {
    EXPECT_NEAR(found, expected, tolerance * std::abs(expected));
}

magnetics::CoreModel oneBlock(double permeability, double resistivity, double thickness) {
    magnetics::CoreModel core;
    core.area = 1e-4;
    core.pathLength = 0.1;
    magnetics::StackBlock block;
    block.initialPermeability = permeability;
    block.resistivity = resistivity;
    block.thickness = thickness;
    core.blocks = {block};
    return core;
}

/// Loss per iron volume, W/m3, of one turn at mean peak flux density B: |V|^2 / 2 Re(1 / (j w Lambda)), |V| = w A B.
double networkLoss(const magnetics::CoreModel& core, double frequency, double flux) {
    const std::complex<double> impedance =
        std::complex<double>(0, 2 * std::numbers::pi * frequency) * magnetics::turnInductance(core, frequency);
    const double volts = 2 * std::numbers::pi * frequency * core.area * flux;
    return volts * volts / 2 * (1.0 / impedance).real() / (core.area * core.pathLength);
}

/// Row: W/kg by P = pi^2 B^2 f^2 d^2 / (6 rho) / density; formula seen in an open web source on eddy current (there
/// labelled W/kg, in truth W/m3); values derived.
struct Classical {
    const char* row;
    double flux, frequency, thickness, resistivity, density, wattsPerKilogram;
};
void PrintTo(const Classical& r, std::ostream* out) {
    *out << r.row;
}

class PublishedClassicalLoss : public testing::TestWithParam<Classical> {};

TEST_P(PublishedClassicalLoss, PerMass) {
    const Classical& row = GetParam();
    const double loss = magnetics::classicalEddyLoss(row.flux, row.frequency, row.thickness, row.resistivity);
    expectRelative(loss / row.density, row.wattsPerKilogram, 1e-5);
}

TEST_P(PublishedClassicalLoss, IsWhatTheImaginaryPermeabilityTakesInAThinSheet) {
    const Classical& row = GetParam();
    const double permeability = 50;  // d < delta / 8: flux uniform over the sheet, where the classical form holds
    const double loss = networkLoss(oneBlock(permeability, row.resistivity, row.thickness), row.frequency, row.flux);
    expectRelative(loss / row.density, row.wattsPerKilogram, 1e-5);
}

TEST_P(PublishedClassicalLoss, IsNotChangedByAGapAtTheSameFlux) {
    const Classical& row = GetParam();
    magnetics::CoreModel core = oneBlock(50, row.resistivity, row.thickness);
    core.gap = 1e-3;
    expectRelative(networkLoss(core, row.frequency, row.flux) / row.density, row.wattsPerKilogram, 1e-5);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedClassicalLoss,
                         testing::Values(Classical{"M-PE1", 1.5, 50, 0.35e-3, 4.8e-7, 7650, 0.308677},      // derived
                                         Classical{"M-PE3", 0.5, 1000, 0.35e-3, 5.8e-7, 8740, 9.937684}));  // derived

/// Row: loss at d / delta over the classical loss, (3/x)(sinh x - sin x)/(cosh x - cos x), x = d / delta: the textbook
/// correction for skin effect (J. Lammeraner and M. Stafl, Eddy Currents, 1966; memory). Values derived.
struct SkinLoss {
    double thicknessOverDepth, share;
};
void PrintTo(const SkinLoss& r, std::ostream* out) {
    *out << "d/delta " << r.thicknessOverDepth;
}

class PublishedSkinLoss : public testing::TestWithParam<SkinLoss> {};

TEST_P(PublishedSkinLoss, AtMeanFlux) {
    const SkinLoss& row = GetParam();
    const double permeability = 6000, resistivity = 48e-8, frequency = 1000, flux = 0.01;
    const double thickness = row.thicknessOverDepth * magnetics::skinDepth(frequency, permeability, resistivity);
    const double classical = magnetics::classicalEddyLoss(flux, frequency, thickness, resistivity);
    const double loss = networkLoss(oneBlock(permeability, resistivity, thickness), frequency, flux);
    expectRelative(loss / classical, row.share, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedSkinLoss,
                         testing::Values(SkinLoss{0.5, 0.9999008093058536},    // derived
                                         SkinLoss{1, 0.9984166964985608},      // derived
                                         SkinLoss{2, 0.9755888715622834},      // derived
                                         SkinLoss{3, 0.8932052386116657},      // derived
                                         SkinLoss{4, 0.7522756851373981},      // derived
                                         SkinLoss{6, 0.5030811291426666},      // derived
                                         SkinLoss{10, 0.29999196221474644}));  // derived

}  // namespace core_loss_test
