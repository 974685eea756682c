// SPDX-License-Identifier: GPL-3.0-or-later
// The optimiser against published test functions whose least values are known.
#include "seek/least.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace least_test {

// H. H. Rosenbrock, The Computer Journal 3 (1960) 175: 100 (y - x^2)^2 + (1 - x)^2, least 0 at (1, 1), from (-1.2, 1).
// From memory. A bent valley is hard for linear models, hence many steps and a hundredth.
TEST(SeekLeast, FollowsRosenbrocksValley) {
    seek::Problem problem;
    problem.low = {-2, -2};
    problem.high = {2, 2};
    problem.start = {-1.2, 1};
    problem.step = 0.1;
    problem.tolerance = 1e-6;
    problem.evaluations = 20000;
    problem.value = [](const std::vector<double>& x, std::vector<double>&) {
        return 100 * std::pow(x[1] - x[0] * x[0], 2) + std::pow(1 - x[0], 2);
    };
    const auto found = seek::least(problem);
    EXPECT_NEAR(found.at[0], 1, 0.01);
    EXPECT_NEAR(found.at[1], 1, 0.02);
    EXPECT_LE(found.evaluations, problem.evaluations);
}

// The problem of NLopt's tutorial, least sqrt(8/27) = 0.5443 at (1/3, 8/27) where both constraints meet (seen in the
// test-example.R of the R package nloptr, J. Ypma): sqrt(y) under y >= (2 x)^3 and y >= (1 - x)^3.
TEST(SeekLeast, StopsWhereTwoCubicsMeet) {
    seek::Problem problem;
    problem.low = {-5, 1e-9};
    problem.high = {5, 8};
    problem.start = {1.234, 5.678};
    problem.tolerance = 1e-7;
    problem.evaluations = 2000;
    problem.constraints = 2;
    problem.value = [](const std::vector<double>& x, std::vector<double>& broken) {
        broken = {std::pow(2 * x[0], 3) - x[1], std::pow(1 - x[0], 3) - x[1]};
        return std::sqrt(x[1]);
    };
    const auto found = seek::least(problem);
    EXPECT_NEAR(found.at[0], 1.0 / 3, 1e-4);
    EXPECT_NEAR(found.at[1], 8.0 / 27, 1e-4);
    EXPECT_NEAR(found.value, 0.5443, 0.00005);
    EXPECT_LE(found.broken, 1e-6);
}

// J. B. Rosen and S. Suzuki, Communications of the ACM 8 (1965) 113; number 43 of W. Hock and K. Schittkowski, Test
// Examples for Nonlinear Programming Codes (1981): least -44 at (0, 1, 2, -1), two of three constraints met. From
// memory; that the place keeps them with equality is plain by hand.
TEST(SeekLeast, SolvesRosenAndSuzuki) {
    seek::Problem problem;
    problem.low = {-3, -3, -3, -3};
    problem.high = {3, 3, 3, 3};
    problem.start = {0, 0, 0, 0};
    problem.tolerance = 1e-7;
    problem.evaluations = 5000;
    problem.constraints = 3;
    problem.value = [](const std::vector<double>& x, std::vector<double>& broken) {
        const double a = x[0], b = x[1], c = x[2], d = x[3];
        broken = {a * a + b * b + c * c + d * d + a - b + c - d - 8, a * a + 2 * b * b + c * c + 2 * d * d - a - d - 10,
                  2 * a * a + b * b + c * c + 2 * a - b - d - 5};
        return a * a + b * b + 2 * c * c + d * d - 5 * a - 5 * b - 21 * c + 7 * d;
    };
    const auto found = seek::least(problem);
    EXPECT_NEAR(found.value, -44, 1e-3);
    EXPECT_NEAR(found.at[0], 0, 0.01);
    EXPECT_NEAR(found.at[1], 1, 0.01);
    EXPECT_NEAR(found.at[2], 2, 0.01);
    EXPECT_NEAR(found.at[3], -1, 0.01);
}

TEST(SeekLeast, TellsTheNearestWhereNothingKeepsTheConstraints) {
    seek::Problem problem;
    problem.low = {0};
    problem.high = {1};
    problem.start = {0.5};
    problem.constraints = 2;
    problem.value = [](const std::vector<double>& x, std::vector<double>& broken) {
        broken = {1.5 - x[0], -1};
        return x[0];
    };
    const auto found = seek::least(problem);
    EXPECT_NEAR(found.at[0], 1, 1e-3);
    EXPECT_NEAR(found.broken, 0.5, 1e-3);
}

TEST(SeekLeast, PassesOnWhatIsThrownAndStopsWhenTold) {
    seek::Problem problem;
    problem.low = {0};
    problem.high = {1};
    problem.start = {0.5};
    problem.value = [](const std::vector<double>&, std::vector<double>&) -> double { throw std::runtime_error("no"); };
    EXPECT_THROW((void)seek::least(problem), std::runtime_error);
    std::stop_source source;
    source.request_stop();
    int asked = 0;
    problem.value = [&](const std::vector<double>& x, std::vector<double>&) {
        ++asked;
        return x[0];
    };
    (void)seek::least(problem, source.get_token());
    EXPECT_LE(asked, 1);
}

}  // namespace least_test
