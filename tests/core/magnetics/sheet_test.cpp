// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet's permeability in its limits, and against the field inside the sheet solved step by step.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "magnetics/permeability.h"

namespace sheet_test {

constexpr double permeability = 60000, resistivity = 58e-8, thickness = 0.35e-3;

std::complex<double> at(double frequency) {
    return magnetics::sheetPermeability(frequency, permeability, resistivity, thickness);
}

TEST(SheetPermeability, IsInitialAtZeroFrequency) {
    EXPECT_EQ(at(0), std::complex<double>(permeability, 0));
}

TEST(SheetPermeability, StaysFiniteWhereTheSheetIsVeryManySkinDepths) {
    const double frequency = 1e15;  // d / delta = 7e6: a plain hyperbolic tangent overflows
    const double expected = permeability * magnetics::skinDepth(frequency, permeability, resistivity) / thickness;
    EXPECT_NEAR(at(frequency).real(), expected, 1e-9 * expected);
    EXPECT_NEAR(-at(frequency).imag(), expected, 1e-9 * expected);
}

TEST(SheetPermeability, FallsAsTheRootOfFrequencyAtFortyFiveDegrees) {
    EXPECT_NEAR(std::abs(at(1e5)) / std::abs(at(4e5)), 2, 1e-9);
    EXPECT_NEAR(std::arg(at(1e5)), -std::numbers::pi / 4, 1e-9);
}

TEST(SheetPermeability, ImaginaryPartStartsWithTheSquareOfThicknessOverDepth) {
    for (double frequency = 1e-12; frequency < 0.1; frequency *= 10) {
        const double ratio = thickness / magnetics::skinDepth(frequency, permeability, resistivity);
        EXPECT_NEAR(-at(frequency).imag() / permeability / (ratio * ratio / 6), 1, 1e-5) << frequency;
    }
}

TEST(SheetPermeability, SeriesAndClosedFormMeet) {
    // u = (d / delta)^2 / 2 = 0.01 at this frequency: from there the closed form takes over.
    const double frequency =
        0.02 * resistivity / (std::numbers::pi * magnetics::mu0 * permeability * thickness * thickness);
    const std::complex<double> below = at(frequency * (1 - 1e-9));
    const std::complex<double> above = at(frequency * (1 + 1e-9));
    EXPECT_NEAR(below.real() / above.real(), 1, 1e-12);
    EXPECT_NEAR(below.imag() / above.imag(), 1, 5e-9);
}

TEST(SheetPermeability, BothPartsStayPositiveAndTheMagnitudeFalls) {
    double before = permeability;
    for (double frequency = 1e-3; frequency < 1e7; frequency *= 1.3) {
        const std::complex<double> mu = at(frequency);
        EXPECT_GT(mu.real(), 0) << frequency;
        EXPECT_LT(mu.imag(), 0) << frequency;
        EXPECT_LE(std::abs(mu), before) << frequency;
        before = std::abs(mu);
    }
}

TEST(SheetPermeability, OnlyTheRatioToTheSkinDepthMatters) {
    const std::complex<double> mu = at(200);
    const std::complex<double> thinner = magnetics::sheetPermeability(800, permeability, resistivity, thickness / 2);
    EXPECT_NEAR(std::abs(mu - thinner), 0, 1e-9 * permeability);
}

/// Mean of H(y) over half a sheet over its surface value, d2H/dy2 = (j 2 / delta^2) H solved by finite differences with
/// a tridiagonal sweep: shares no formula with the closed form.
std::complex<double> fieldSolvedStepByStep(double frequency) {
    const double depth = magnetics::skinDepth(frequency, permeability, resistivity);
    const int cells = 4000;
    const double step = thickness / 2 / cells;
    const std::complex<double> middle(2, 2 * step * step / (depth * depth));
    // Unknowns from the middle plane (mirror condition) outward; the surface is 1. Forward sweep of h_i = c_i h_{i+1}.
    std::vector<std::complex<double>> carry(cells);
    carry[0] = 2.0 / middle;
    for (std::size_t i = 1; i < carry.size(); ++i) carry[i] = 1.0 / (middle - carry[i - 1]);
    std::complex<double> field = 1, sum = 0.5;
    for (std::size_t i = carry.size(); i-- > 0;) {
        field *= carry[i];
        sum += i == 0 ? field / 2.0 : field;
    }
    return permeability * sum / double(cells);
}

TEST(SheetPermeability, AgreesWithTheFieldInTheSheet) {
    for (const double frequency : {1.0, 20.0, 80.0, 300.0, 1000.0, 3000.0}) {
        const std::complex<double> solved = fieldSolvedStepByStep(frequency);
        EXPECT_NEAR(std::abs(at(frequency) / solved - 1.0), 0, 2e-6) << frequency;
    }
}

TEST(EddyCorner, ScalesWithThicknessSquared) {
    EXPECT_NEAR(magnetics::eddyCorner(6000, 48e-8, 0.1e-3) / magnetics::eddyCorner(6000, 48e-8, 0.35e-3), 12.25, 1e-12);
}

TEST(ClassicalEddyLoss, ScalesWithTheSquareOfFluxFrequencyAndThickness) {
    const double loss = magnetics::classicalEddyLoss(0.5, 100, 0.1e-3, 5e-7);
    EXPECT_NEAR(magnetics::classicalEddyLoss(1.0, 200, 0.2e-3, 5e-7) / loss, 64, 1e-12);
    EXPECT_NEAR(magnetics::classicalEddyLoss(0.5, 100, 0.1e-3, 10e-7) / loss, 0.5, 1e-12);
}

}  // namespace sheet_test
