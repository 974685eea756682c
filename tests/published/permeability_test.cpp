// SPDX-License-Identifier: GPL-3.0-or-later
// Complex permeability of a lamination against printed and derived values.
#include "magnetics/permeability.h"

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>

namespace permeability_test {

void expectRelative(double found, double expected, double tolerance) {
    EXPECT_NEAR(found, expected, tolerance * std::abs(expected));
}

/// Row: tanh(theta)/theta at d / delta. Formula: R. M. Bozorth, Ferromagnetism (1951), ch. 17 (memory);
/// values derived with an independent complex tanh, verified against the classical loss.
struct Ratio {
    const char* row;
    double thicknessOverDepth, real, imaginary;
};
void PrintTo(const Ratio& r, std::ostream* out) {
    *out << r.row;
}

class PublishedSheetRatio : public testing::TestWithParam<Ratio> {};

TEST_P(PublishedSheetRatio, FollowsTanhThetaOverTheta) {
    const Ratio& row = GetParam();
    const double permeability = 20000, resistivity = 55e-8, frequency = 400;
    const double thickness = row.thicknessOverDepth * magnetics::skinDepth(frequency, permeability, resistivity);
    const auto mu = magnetics::sheetPermeability(frequency, permeability, resistivity, thickness) / permeability;
    EXPECT_NEAR(mu.real(), row.real, 1e-6);
    EXPECT_NEAR(-mu.imag(), row.imaginary, 1e-6);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedSheetRatio,
                         testing::Values(Ratio{"M-T0.5", 0.5, 0.997922, 0.041562},  // derived
                                         Ratio{"M-T1", 1, 0.967980, 0.160187},      // derived
                                         Ratio{"M-T2", 2, 0.677838, 0.406085},      // derived
                                         Ratio{"M-T3", 3, 0.373040, 0.362676},      // derived
                                         Ratio{"M-T4", 4, 0.248861, 0.263057},      // derived
                                         Ratio{"M-T5", 5, 0.196646, 0.201795},      // derived
                                         Ratio{"M-T6", 6, 0.165645, 0.166105},      // derived
                                         Ratio{"M-T10", 10, 0.100003, 0.100013}));  // derived

/// Row: frequency where d = 2 delta, f = 4 rho / (pi mu0 mu_i d^2) (textbook, memory); values derived.
struct Corner {
    const char* row;
    double permeability, resistivity, thickness, frequency;
};
void PrintTo(const Corner& r, std::ostream* out) {
    *out << r.row;
}

class PublishedEddyCorner : public testing::TestWithParam<Corner> {};

TEST_P(PublishedEddyCorner, LiesWhereTheSheetIsTwoSkinDepths) {
    const Corner& row = GetParam();
    const double corner = magnetics::eddyCorner(row.permeability, row.resistivity, row.thickness);
    expectRelative(corner, row.frequency, 1e-5);
    expectRelative(2 * magnetics::skinDepth(row.frequency, row.permeability, row.resistivity), row.thickness, 1e-5);
    const auto mu = magnetics::sheetPermeability(row.frequency, row.permeability, row.resistivity, row.thickness);
    EXPECT_NEAR(std::abs(mu) / row.permeability, 0.790, 5e-4);  // printed to three digits
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedEddyCorner,
                         testing::Values(Corner{"M-FC-80Ni-0.35", 60000, 58e-8, 0.35e-3, 79.954},    // derived
                                         Corner{"M-FC-80Ni-0.15", 60000, 58e-8, 0.15e-3, 435.306},   // derived
                                         Corner{"M-FC-50Ni-0.35", 6000, 48e-8, 0.35e-3, 661.689},    // derived
                                         Corner{"M-FC-3Si-0.35", 1500, 48e-8, 0.35e-3, 2646.757}));  // derived

/// Row: skin depth and complex permeability of a stated sheet; same formula, values derived.
struct Sheet {
    const char* row;
    double permeability, resistivity, thickness, frequency, depth, real, imaginary;
};
void PrintTo(const Sheet& r, std::ostream* out) {
    *out << r.row;
}

class PublishedSheet : public testing::TestWithParam<Sheet> {};

TEST_P(PublishedSheet, HasItsSkinDepthAndPermeability) {
    const Sheet& row = GetParam();
    const double depth = magnetics::skinDepth(row.frequency, row.permeability, row.resistivity);
    EXPECT_NEAR(depth, row.depth, 0.5e-9);  // given to the nanometre
    const auto mu = magnetics::sheetPermeability(row.frequency, row.permeability, row.resistivity, row.thickness);
    expectRelative(mu.real(), row.real, 1e-5);
    expectRelative(-mu.imag(), row.imaginary, 1e-5);
}

INSTANTIATE_TEST_SUITE_P(
    Rows, PublishedSheet,
    testing::Values(Sheet{"M-C-80Ni-0.35-1k", 60000, 58e-8, 0.35e-3, 1e3, 49.483e-6, 8482.93, 8462.52},    // derived
                    Sheet{"M-C-80Ni-0.10-1k", 60000, 58e-8, 0.10e-3, 1e3, 49.483e-6, 40182.76, 24474.59},  // derived
                    Sheet{"M-C-80Ni-0.10-20k", 60000, 58e-8, 0.10e-3, 2e4, 11.065e-6, 6640.94, 6639.74},   // derived
                    Sheet{"M-C-50Ni-0.15-10k", 6000, 48e-8, 0.15e-3, 1e4, 45.016e-6, 1905.17, 1957.50},    // derived
                    Sheet{"M-C-3Si-0.35-1k", 1500, 48e-8, 0.35e-3, 1e3, 284.705e-6, 1395.58, 345.89}));    // derived

}  // namespace permeability_test
