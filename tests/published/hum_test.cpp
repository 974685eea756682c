// SPDX-License-Identifier: GPL-3.0-or-later
// Shells in a uniform field and bodies of iron in one, against published formulas.
//
// Sources: J. D. Jackson, Classical Electrodynamics, 5.12 (memory); S = 4/3 mu d/D for a closed can (seen, on a page on
// shielding cans); J. A. Osborn, Phys. Rev. 67 (1945), spheroids (memory).
#include "analysis/hum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

namespace hum_test {

using analysis::shellScreening;

TEST(PublishedScreening, OneShell) {  // closed form, memory
    for (const double mu : {1.0, 10.0, 1000.0, 30e3})
        for (const double ratio : {0.5, 0.9, 0.99}) {
            const double expected = ((2 * mu + 1) * (mu + 2) - 2 * std::pow(ratio, 3) * (mu - 1) * (mu - 1)) / (9 * mu);
            EXPECT_NEAR(shellScreening({{ratio, 1, mu}}) / expected, 1, 1e-9) << mu << " " << ratio;
        }
}

TEST(PublishedScreening, ThinCan) {
    // Seen: 4/3 mu d/D, for mu d/D far above 1. 20 000, 0.5 mm, 50 mm: 266.7; to the thickness over the radius, 2 %.
    EXPECT_NEAR(shellScreening({{0.0245, 0.025, 20e3}}) / (4.0 / 3 * 20e3 * 0.5 / 50), 1, 0.025);
}

TEST(PublishedScreening, TwoThinShells) {
    // Thin shells far from each other: S = 1 + S1 + S2 + S1 S2 (1 - (D1/D2)^3), S = 4/3 mu d/D each (derived).
    const double mu = 20e3, d = 1e-5;
    const double inner = 4.0 / 3 * mu * d / 0.05, outer = 4.0 / 3 * mu * d / 0.07;
    const double expected = 1 + inner + outer + inner * outer * (1 - std::pow(5.0 / 7, 3));
    EXPECT_NEAR(shellScreening({{0.025 - d / 2, 0.025 + d / 2, mu}, {0.035 - d / 2, 0.035 + d / 2, mu}}) / expected, 1,
                2e-3);
}

TEST(PublishedScreening, ThickShell) {
    // S. N. Makarov, G. M. Noetscher, A. Nazarian, Low-Frequency Electromagnetic Modeling (2015), 9.35, second-hand:
    // radii 0.5 and 0.45, permeability 5000: 302.
    EXPECT_NEAR(shellScreening({{0.45, 0.5, 5000}}), 302, 0.5);
}

TEST(PublishedScreening, NothingIsNotScreened) {
    EXPECT_EQ(shellScreening({}), 1);
    EXPECT_NEAR(shellScreening({{0.02, 0.03, 1}}), 1, 1e-12);
}

TEST(PublishedDemagnetisation, Spheroids) {
    EXPECT_NEAR(analysis::demagnetisingFactor(1, 1, 1), 1.0 / 3, 1e-9);
    // Prolate, closed form (Osborn, memory): N = (m / (2 sqrt(m^2 - 1)) ln((m + r)/(m - r)) - 1) / (m^2 - 1).
    for (const double m : {2.0, 5.0, 10.0}) {
        const double r = std::sqrt(m * m - 1);
        const double expected = (m / (2 * r) * std::log((m + r) / (m - r)) - 1) / (m * m - 1);
        EXPECT_NEAR(analysis::demagnetisingFactor(m, 1, 1), expected, 1e-7) << m;
    }
    EXPECT_NEAR(analysis::demagnetisingFactor(2, 1, 1), 0.1736, 1e-4);   // Osborn's table, memory
    EXPECT_NEAR(analysis::demagnetisingFactor(10, 1, 1), 0.0203, 1e-4);  // the same
}

/// Osborn's (2.3) for the shortest of three unlike axes, by Legendre's incomplete integral of the second kind (seen, as
/// quoted in a page's program).
double osbornShortest(double a, double b, double c) {
    const double theta = std::acos(c / a), phi = std::acos(b / a), k = std::sin(phi) / std::sin(theta);
    const double sine = std::sin(theta);
    return std::cos(phi) * std::cos(theta) / (sine * sine * sine * (1 - k * k)) *
           (sine * std::cos(phi) / std::cos(theta) - std::ellint_2(k, theta));
}

TEST(PublishedDemagnetisation, ThreeUnlikeAxes) {
    for (const auto& [a, b, c] : {std::tuple{3.0, 2.0, 1.0}, {40.0, 32.0, 16.0}, {24.0, 20.0, 8.0}, {50.0, 30.0, 3.0}})
        EXPECT_NEAR(analysis::demagnetisingFactor(c, a, b), osbornShortest(a, b, c), 1e-7) << a << " " << b << " " << c;
}

TEST(PublishedDemagnetisation, ThreeAxesAddUpToOne) {
    const double a = 20e-3, b = 24e-3, c = 8e-3;  // the outline of a small shell core
    EXPECT_NEAR(analysis::demagnetisingFactor(a, b, c) + analysis::demagnetisingFactor(b, c, a) +
                    analysis::demagnetisingFactor(c, a, b),
                1, 1e-6);
}

TEST(PublishedDemagnetisation, DrawnFluxOfASphere) {
    // B inside a sphere of iron is 3 mu / (mu + 2) times the field outside (textbook).
    EXPECT_NEAR(analysis::drawnFlux(1, 1, 1, 100) / (M_PI * 300 / 102), 1, 1e-6);
    EXPECT_NEAR(analysis::drawnFlux(2, 1, 1, 1), M_PI, 1e-9);  // no iron
}

}  // namespace hum_test
