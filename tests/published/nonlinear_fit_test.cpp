// SPDX-License-Identifier: GPL-3.0-or-later
// The least-squares search against problems with certified answers.
// NIST StRD, nonlinear regression, Misra1a (lower level of difficulty) and Thurber (higher): data, starting values and
// certified values seen as copies in several public test collections that agree.
#include <gtest/gtest.h>

#include <Eigen/LU>
#include <cmath>
#include <functional>
#include <limits>
#include <vector>

#include "learn/least_squares.h"

namespace nonlinear_fit_test {

using Vector = Eigen::VectorXd;
using Numbers = std::vector<double>;

struct Certified {
    Numbers x, y;
    std::function<double(const Vector&, double)> model;
    std::vector<Numbers> starts;
    Numbers values, deviations;
    double squares;
};

Vector vectorOf(const Numbers& all) {
    return Eigen::Map<const Vector>(all.data(), static_cast<Eigen::Index>(all.size()));
}

void expectCertified(const Certified& set, double relative) {
    for (const auto& start : set.starts) {
        learn::SquaresProblem problem;
        problem.start = vectorOf(start);
        problem.low = Vector::Constant(problem.start.size(), -std::numeric_limits<double>::infinity());
        problem.high = -problem.low;
        problem.count = static_cast<Eigen::Index>(set.x.size());
        problem.evaluations = 20000;
        problem.off = [&](const Vector& at, Vector& off) {
            for (std::size_t k = 0; k < set.x.size(); ++k)
                off(static_cast<Eigen::Index>(k)) = set.model(at, set.x[k]) - set.y[k];
        };
        const auto found = learn::leastSquares(problem);
        EXPECT_TRUE(found.settled);
        EXPECT_NEAR(found.squares / set.squares, 1, 1e-9);
        const double variance = found.squares / static_cast<double>(set.x.size() - set.values.size());
        const Eigen::MatrixXd information = found.slopes.transpose() * found.slopes;
        const Eigen::MatrixXd covariance = information.fullPivLu().inverse() * variance;
        for (std::size_t k = 0; k < set.values.size(); ++k) {
            const auto row = static_cast<Eigen::Index>(k);
            EXPECT_NEAR(found.at(row) / set.values[k], 1, relative) << k << " from " << start.front();
            EXPECT_NEAR(std::sqrt(covariance(row, row)) / set.deviations[k], 1, 1e-4) << k;
        }
    }
}

TEST(PublishedNonlinearFit, Misra1aOfNist) {
    expectCertified({{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
                     {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78},
                     [](const Vector& b, double x) { return b(0) * (1 - std::exp(-b(1) * x)); },
                     {{500, 0.0001}, {250, 0.0005}},
                     {2.3894212918e2, 5.5015643181e-4},
                     {2.7070075241, 7.2668688436e-6},
                     1.2455138894e-1},
                    1e-6);
}

TEST(PublishedNonlinearFit, ThurberOfNist) {
    expectCertified(
        {{-3.067, -2.981, -2.921, -2.912, -2.840, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501,
          -1.460, -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545, -0.400, -0.309, -0.109, -0.103,
          0.010,  0.119,  0.377,  0.790,  0.963,  1.006,  1.115,  1.572,  1.841,  2.047,  2.200},
         {80.574,   84.248,   87.264,   87.195,   89.076,   89.608,   89.868,   90.101,   92.405,   95.854,
          100.696,  101.060,  401.672,  390.724,  567.534,  635.316,  733.054,  759.087,  894.206,  990.785,
          1090.109, 1080.914, 1122.643, 1178.351, 1260.531, 1273.514, 1288.339, 1327.543, 1353.863, 1414.509,
          1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894, 1457.628},
         [](const Vector& b, double x) {
             return (b(0) + x * (b(1) + x * (b(2) + x * b(3)))) / (1 + x * (b(4) + x * (b(5) + x * b(6))));
         },
         {{1000, 1000, 400, 40, 0.7, 0.3, 0.03}, {1300, 1500, 500, 75, 1, 0.4, 0.05}},
         {1.2881396800e3, 1.4910792535e3, 5.8323836877e2, 7.5416644291e1, 9.6629502864e-1, 3.9797285797e-1,
          4.9727297349e-2},
         {4.6647963344, 3.9571156086e1, 2.8698696102e1, 5.5675370270, 3.1333340687e-2, 1.4984928198e-2,
          6.5842344623e-3},
         5.6427082397e3},
        1e-5);
}

}  // namespace nonlinear_fit_test
