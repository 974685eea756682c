// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/wire_cell.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/cell_multipole.h"

namespace wire_cell_test {

using std::numbers::pi;

constexpr double um = 1e-6;

field::RowCell twoRows(double filler) {
    field::RowCell c;
    c.bare = c.otherBare = 100 * um;
    c.overall = c.otherOverall = 118 * um;
    c.pitch = c.otherPitch = 122 * um;
    c.sheet = 50 * um;
    c.distance = c.overall + c.sheet;
    c.filler = filler;
    return c;
}

TEST(WireCell, thinWiresBeforeAPlane) {
    // Line charges and their images: C = 2 pi eps0 / ln(sinh(2 pi h/p) / sinh(pi a/p)), exact as a -> 0.
    field::RowCell c;
    c.bare = c.overall = 1 * um;
    c.pitch = 100 * um;
    c.distance = 60 * um;
    const double a = c.bare / 2, p = c.pitch, h = c.distance;
    const double expected =
        2 * pi * field::vacuumPermittivity / std::log(std::sinh(2 * pi * h / p) / std::sinh(pi * a / p)) / p;
    EXPECT_NEAR(field::rowCapacitance(c).real() / expected, 1, 1e-4);
}

TEST(WireCell, oneDielectricEverywhereScalesVacuum) {
    for (const bool nested : {false, true}) {
        auto c = twoRows(1);
        c.nested = nested;
        c.enamel = c.otherEnamel = c.sheetPermittivity = 1;
        const auto vacuum = field::rowCapacitance(c);
        const std::complex<double> eps{3.1, -0.062};
        c.enamel = c.otherEnamel = c.sheetPermittivity = c.filler = eps;
        EXPECT_LT(std::abs(field::rowCapacitance(c) / (eps * vacuum) - 1.0), 1e-12);
    }
}

TEST(WireCell, turnToTurnScalesAndMeetsNeighbouringWires) {
    const std::complex<double> eps{2.7, -0.05};
    const auto vacuum = field::turnCapacitance(1e-4, 1.2e-4, 1.3e-4, 1, 1);
    EXPECT_LT(std::abs(field::turnCapacitance(1e-4, 1.2e-4, 1.3e-4, eps, eps) / (eps * vacuum) - 1.0), 1e-12);
    // Thin wires of alternating sign: 2 pi eps0 / ln(cot(pi a / 2p)) per wire to the middle, a quarter of it per gap.
    const double a = 0.5e-6, p = 1e-4;
    const double expected = pi * field::vacuumPermittivity / std::log(1 / std::tan(pi * a / (2 * p))) / 2;
    EXPECT_NEAR(field::turnCapacitance(2 * a, 2 * a, p, 1, 1).real() / expected, 1, 1e-4);
}

TEST(WireCell, lossIsNeverNegativeAndLiesBetweenTheMaterials) {
    auto c = twoRows(1);
    c.enamel = c.otherEnamel = {3.5, -3.5 * 0.02};
    c.sheetPermittivity = {3.0, -3.0 * 0.01};
    for (const bool nested : {false, true}) {
        c.nested = nested;
        const auto value = field::rowCapacitance(c);
        const double tangent = -value.imag() / value.real();
        EXPECT_GT(tangent, 0);
        EXPECT_LT(tangent, 0.02);
    }
}

TEST(WireCell, smallLossShiftsTheRealPartOnlyInSecondOrder) {
    auto c = twoRows(3.2);
    const auto dry = field::rowCapacitance(c);
    c.filler = {3.2, -3.2e-4};
    EXPECT_NEAR(field::rowCapacitance(c).real() / dry.real(), 1, 1e-7);
    EXPECT_EQ(dry.imag(), 0);
}

TEST(WireCell, platesAtTheEffectiveDistanceOnAThickSheet) {
    // Rule measured against finite elements: plates at centre distance - 1.15 d + 0.26 p, enamel, sheet and the
    // remainder as filler in series, are right to 0.5 % with a filler near the enamel's permittivity.
    for (const double d : {50.0, 100.0, 250.0})
        for (const double sheet : {0.4, 1.0}) {
            field::RowCell c;
            c.bare = c.otherBare = d * um;
            c.overall = c.otherOverall = 1.17 * d * um;
            c.pitch = c.otherPitch = 1.2 * d * um;
            c.sheet = sheet * d * um;
            c.distance = c.overall + c.sheet;
            c.filler = 3.5;
            const double plates = c.distance - 1.15 * c.bare + 0.26 * c.pitch;
            const double enamel = c.overall - c.bare;
            const double reduced = enamel / 3.5 + c.sheet / 3.0 + (plates - enamel - c.sheet) / 3.5;
            EXPECT_NEAR(field::rowCapacitance(c).real() * reduced / field::vacuumPermittivity, 1, 0.006);
        }
}

TEST(WireCell, farAwayOnlyTheDistanceCounts) {
    auto c = twoRows(1);
    c.sheet = 0;
    const auto reduced = [&](double distance) {
        c.distance = distance;
        return field::vacuumPermittivity / field::rowCapacitance(c).real();
    };
    EXPECT_NEAR(reduced(3e-3) - reduced(2e-3), 1e-3, 1e-9);
}

TEST(WireCell, unequalRowsGoOverIntoEqualOnes) {
    auto c = twoRows(1);
    const auto equal = field::rowCapacitance(c);
    c.otherPitch *= 1.0001;
    EXPECT_NEAR(field::rowCapacitance(c).real() / equal.real(), 1, 2e-4);
    auto turned = c;
    std::swap(turned.pitch, turned.otherPitch);
    EXPECT_NEAR(field::rowCapacitance(turned).real() / field::rowCapacitance(c).real(), 1, 1e-12);
}

TEST(WireCell, convergesAtTheTouchingPoint) {
    // Wires that touch each other and a plane: the worst case; order 16 against 24.
    const field::WireRow row{100 * um, 118 * um, 118 * um, 3.5, 1.0};
    const field::FacingPlane plane{59 * um, 0, 1.0, false};
    EXPECT_NEAR(field::rowToPlane(row, plane, 16).real() / field::rowToPlane(row, plane, 24).real(), 1, 3e-4);
    const field::FacingPlane groove{59 * um * std::sqrt(0.75), 0, 1.0, true};
    EXPECT_NEAR(field::rowToPlane(row, groove, 16).real() / field::rowToPlane(row, groove, 24).real(), 1, 5e-4);
    EXPECT_NEAR(field::alternatingRow(row, 16).real() / field::alternatingRow(row, 24).real(), 1, 3e-4);
}

TEST(WireCell, nestedTouchingRowsHoldMoreThanAligned) {
    auto c = twoRows(1);
    c.sheet = 0;
    c.pitch = c.otherPitch = c.overall;
    c.distance = c.overall;
    const auto aligned = field::rowCapacitance(c);
    c.nested = true;
    c.distance = c.overall * std::sqrt(0.75);
    const auto nested = field::rowCapacitance(c);
    EXPECT_GT(nested.real(), 1.2 * aligned.real());
    c.distance = 0.5 * c.overall;  // nearer than wires can lie: taken as touching
    EXPECT_NEAR(field::rowCapacitance(c).real() / nested.real(), 1, 1e-9);
}

}  // namespace wire_cell_test
