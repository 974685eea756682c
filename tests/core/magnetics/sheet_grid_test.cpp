// SPDX-License-Identifier: GPL-3.0-or-later
// Places across a sheet: the linear sheet's closed form is their limit.
#include <gtest/gtest.h>

#include <Eigen/LU>
#include <complex>
#include <numeric>

#include "magnetics/permeability.h"
#include "magnetics/sheet_grid.h"

namespace sheet_grid_test {

using magnetics::SheetGrid;

/// Mean of B over mu H at the surface of a linear sheet, at a half thickness over skin depth: real and imaginary part
/// of the fields within side by side.
std::complex<double> meanFlux(const SheetGrid& grid, double halfOverSkinDepth) {
    const auto inner = static_cast<Eigen::Index>(grid.places.size()) - 1;
    const Eigen::Map<const Eigen::VectorXd> mass(grid.weights.data(), inner + 1);
    const double square = 2 * halfOverSkinDepth * halfOverSkinDepth;  // theta^2 = j square
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(2 * inner, 2 * inner);
    matrix.topLeftCorner(inner, inner) = matrix.bottomRightCorner(inner, inner) =
        grid.stiffness.topLeftCorner(inner, inner);
    matrix.topRightCorner(inner, inner).diagonal() = -square * mass.head(inner);
    matrix.bottomLeftCorner(inner, inner).diagonal() = square * mass.head(inner);
    Eigen::VectorXd surface = Eigen::VectorXd::Zero(2 * inner);
    surface.head(inner) = -grid.stiffness.col(inner).head(inner);
    const Eigen::VectorXd within = matrix.partialPivLu().solve(surface);
    return {mass(inner) + mass.head(inner).dot(within.head(inner)), mass.head(inner).dot(within.tail(inner))};
}

class OfPlaces : public testing::TestWithParam<int> {};

TEST_P(OfPlaces, WeightsAreOneAndAnEvenFieldDrivesNothing) {
    const SheetGrid grid(GetParam());
    ASSERT_EQ(grid.places.size(), static_cast<std::size_t>(GetParam()));
    EXPECT_NEAR(std::accumulate(grid.weights.begin(), grid.weights.end(), 0.0), 1, 1e-13);
    EXPECT_DOUBLE_EQ(grid.places.back(), 1);
    const double small = 1e-11 * (1 + grid.stiffness.norm());
    EXPECT_LT(grid.stiffness.rowwise().sum().cwiseAbs().maxCoeff(), small);
    EXPECT_LT((grid.stiffness - grid.stiffness.transpose()).norm(), small);
}

INSTANTIATE_TEST_SUITE_P(SheetGrid, OfPlaces, testing::Values(1, 2, 5, 12, 24));

/// Four places: field and flux of x^2 and x^4 in closed form.
TEST(SheetGrid, IntegratesEvenPolynomialsExactly) {
    const SheetGrid grid(4);
    double square = 0, tenth = 0, slopes = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        square += grid.weights[i] * std::pow(grid.places[i], 2);
        tenth += grid.weights[i] * std::pow(grid.places[i], 10);
        for (std::size_t j = 0; j < 4; ++j)
            slopes += std::pow(grid.places[i], 2) *
                      grid.stiffness(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) *
                      std::pow(grid.places[j], 4);
    }
    EXPECT_NEAR(square, 1.0 / 3, 1e-13);
    EXPECT_NEAR(tenth, 1.0 / 11, 1e-13);
    EXPECT_NEAR(slopes, 8.0 / 5, 1e-12);  // integral of 2 x * 4 x^3
}

/// tanh(theta) / theta, `magnetics::sheetPermeability` (R. M. Bozorth 1951, J. Lammeraner and M. Stafl 1966, from
/// memory).
TEST(SheetGrid, ALinearSheetIsItsClosedForm) {
    constexpr double mu = 1000, ohmMetre = 0.5e-6, thickness = 0.35e-3;
    const double corner = magnetics::eddyCorner(mu, ohmMetre, thickness);  // half thickness = skin depth
    for (const double depths : {0.1, 0.5, 1.0, 3.0, 8.0, 16.0}) {
        const auto exact = magnetics::sheetPermeability(corner * depths * depths, mu, ohmMetre, thickness) / mu;
        const auto found = meanFlux(SheetGrid(magnetics::placesFor(depths)), depths);
        EXPECT_LT(std::abs(found / exact - 1.0), 1e-4) << depths;
    }
}

}  // namespace sheet_grid_test
