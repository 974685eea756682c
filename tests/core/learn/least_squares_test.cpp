// SPDX-License-Identifier: GPL-3.0-or-later
// The search within bounds against SciPy 1.10.1 (optimize.least_squares, trust region reflective, three-point slopes).
#include "learn/least_squares.h"

#include <gtest/gtest.h>

#include <Eigen/LU>

#include <cmath>
#include <limits>

namespace least_squares_test {

using Vector = Eigen::VectorXd;

/// Two decays through twenty-one points that neither fits.
learn::SquaresProblem decays(double least) {
    learn::SquaresProblem problem;
    problem.start = Vector(4);
    problem.start << 1, 1, 1, 0.35;
    problem.low = Vector(4);
    problem.low << 0, 0, 0, least;
    problem.high = Vector(4);
    problem.high << 5, 5, 5, 2;
    problem.count = 21;
    problem.evaluations = 4000;
    problem.off = [](const Vector& at, Vector& off) {
        for (int k = 0; k < 21; ++k) {
            const double t = 0.2 * k;
            off(k) = at(0) * std::exp(-at(1) * t) + at(2) * std::exp(-at(3) * t) - 2 * std::exp(-1.3 * t) -
                     0.7 * std::exp(-0.25 * t) - 0.01 * std::sin(7 * t);
        }
    };
    return problem;
}

TEST(LeastSquares, AFreeMinimumIsScipys) {
    const auto found = learn::leastSquares(decays(0.1));
    EXPECT_TRUE(found.settled);
    const double expected[] = {2.0213213725893504, 1.2933509706774673, 0.6818244633719633, 0.24176737629591705};
    for (int k = 0; k < 4; ++k) EXPECT_NEAR(found.at(k), expected[k], 1e-5) << k;
    EXPECT_NEAR(found.squares, 0.0009715181858030404, 1e-12);
    const double deviations[] = {6.729192297836162, 4.2262961811231685, 7.000502978475405, 2.7610571407868787};
    const Eigen::MatrixXd information = found.slopes.transpose() * found.slopes;
    const Eigen::MatrixXd covariance = information.fullPivLu().inverse();
    for (int k = 0; k < 4; ++k) EXPECT_NEAR(std::sqrt(covariance(k, k)) / deviations[k], 1, 1e-3) << k;
}

TEST(LeastSquares, AMinimumAtABoundIsScipys) {
    const auto found = learn::leastSquares(decays(0.3));
    const double expected[] = {1.8680264086027045, 1.3877568173593964, 0.8411904215736195, 0.3};
    for (int k = 0; k < 4; ++k) EXPECT_NEAR(found.at(k), expected[k], 2e-4) << k;
    EXPECT_NEAR(found.squares, 0.0014699096051864627, 1e-9);
    EXPECT_GE(found.at(3), 0.3);
}

TEST(LeastSquares, AStraightLineIsExactWithoutBounds) {
    learn::SquaresProblem problem;
    problem.start = Vector::Zero(2);
    problem.low = Vector::Constant(2, -std::numeric_limits<double>::infinity());
    problem.high = -problem.low;
    problem.count = 3;
    problem.off = [](const Vector& at, Vector& off) {
        // Through (0, 1), (1, 2), (2, 4): slope 1.5, 5/6 at 0; squares 1/6.
        const double y[] = {1, 2, 4};
        for (int k = 0; k < 3; ++k) off(k) = at(0) + at(1) * k - y[k];
    };
    const auto found = learn::leastSquares(problem);
    EXPECT_NEAR(found.at(0), 5.0 / 6, 1e-7);
    EXPECT_NEAR(found.at(1), 1.5, 1e-7);
    EXPECT_NEAR(found.squares, 1.0 / 6, 1e-12);
    EXPECT_EQ(found.before, 21);
}

TEST(LeastSquares, StoppedItEndsWithoutASettledPlace) {
    std::stop_source stop;
    stop.request_stop();
    const auto found = learn::leastSquares(decays(0.1), stop.get_token());
    EXPECT_FALSE(found.settled);
    EXPECT_TRUE(found.at.allFinite());
}

}  // namespace least_squares_test
