// SPDX-License-Identifier: GPL-3.0-or-later
// Leakage beyond the window: the inductance of pairs of straight bars by geometric mean distances.
//
// E. B. Rosa, On the geometrical mean distances of rectangular areas and the calculation of self-inductance, Bulletin
// of the Bureau of Standards 3 (1907); title and method seen, numbers from memory: a square of side a from itself
// 0.44705 a, two squares side by side 1.00655 a. Both agree with a quadrature of SciPy to the last digit. A pair of
// bars, one the return of the other, has L' = (mu0 / pi) ln(distance / own) a metre: 4e-7 x 0.811613 = 0.324645 uH.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/image_potential.h"
#include "field/leakage.h"

namespace free_space_test {

constexpr double millimetre = 1e-3;

double lambda(const std::vector<field::CurrentBox>& bars) {
    return field::pairLambda(field::windowMatrix(bars, {1, 1}, field::Surroundings::Open))(0, 1);
}

field::CurrentBox bar(double x, double y, double width, double height) {
    return {{x * millimetre, (x + width) * millimetre, y * millimetre, (y + height) * millimetre}, 1};
}

TEST(PublishedFreeSpace, SquareBarsSideBySideFarFromIron) {
    // 100 sides from the plane, whose image takes 1.5e-5 of it away or adds it.
    EXPECT_NEAR(lambda({bar(100, 0, 1, 1), bar(100, 1, 1, 1)}) * 1e6, 0.324645, 1.5e-5);
    EXPECT_NEAR(lambda({bar(100, 0, 1, 1), bar(101, 0, 1, 1)}) * 1e6, 0.324645, 1.5e-5);
}

TEST(PublishedFreeSpace, BarsOnIronAreHalfOfSquaresWithTheirImage) {
    // Bars of half a square: with their images in the plane whole squares, and each flux is counted on one side only:
    // L' = (2 mu0 / pi) ln(1.00655 / 0.44705) = 0.649291 uH.
    EXPECT_NEAR(lambda({bar(0, 0, 1, 2), bar(0, 2, 1, 2)}) * 1e6, 0.649291, 1e-5);
}

TEST(PublishedFreeSpace, MeanDistanceOfAThinStripFromItself) {
    // A straight line of length a from itself: a e^(-3/2) = 0.22313 a (J. C. Maxwell, Treatise, 692; memory).
    EXPECT_NEAR(std::exp(field::meanLogDistance({0, 1e-5, 0, 1}, {0, 1e-5, 0, 1})), 0.22313, 5e-6);
}

TEST(PublishedFreeSpace, MeanDistanceOfASquareFromItself) {
    EXPECT_NEAR(std::exp(field::meanLogDistance({0, 1, 0, 1}, {0, 1, 0, 1})), 0.44705, 5e-6);
    EXPECT_NEAR(std::exp(field::meanLogDistance({0, 1, 0, 1}, {1, 2, 0, 1})), 1.00655, 5e-6);
}

}  // namespace free_space_test
