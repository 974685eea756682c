// SPDX-License-Identifier: GPL-3.0-or-later
// Round wire in the alternating field of others, and that field itself.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <ostream>

#include "field/winding_loss.h"
#include "field/window_field.h"

namespace proximity_test {

using std::numbers::pi;
constexpr double copper = 1.7241e-8, millimetre = 1e-3;

/// S. Butterworth's function G of the argument x = pi d sqrt(2 f / rho) (electromagnetic units; d sqrt(w mu0 / rho) / 2
/// in SI): two parallel wires with equal and opposite currents have each lost R_dc G (d/c)^2 more at great distance c.
/// Table in F. E. Terman, Radio Engineers' Handbook (1943), after Butterworth, Phil. Trans. Royal Society A 222 (1922):
/// the function and all digits from memory; agree with SciPy's Bessel functions to the last digit given.
struct Butterworth {
    double argument, loss;
    double lastDigit;
};
void PrintTo(const Butterworth& r, std::ostream* out) {
    *out << "x " << r.argument;
}

class PublishedProximity : public testing::TestWithParam<Butterworth> {};

TEST_P(PublishedProximity, OfAWireInTheFieldOfADistantOne) {
    const auto& r = GetParam();
    const double diameter = 0.5 * millimetre, distance = 1;
    // x is the radius over the skin depth, times the root of two.
    const double depth = std::numbers::sqrt2 * (diameter / 2) / r.argument;
    const double frequency = copper / (pi * depth * depth * 4e-7 * pi);
    const double strength = 1 / (2 * pi * distance);  // of 1 A, Ampere
    const double lost = field::transverseFieldFactor(frequency, diameter, copper).real() * strength * strength;
    const double direct = copper / (pi * diameter * diameter / 4);
    EXPECT_NEAR(lost / direct * distance * distance / (diameter * diameter), r.loss, r.lastDigit / 2 * 1.001);
}

INSTANTIATE_TEST_SUITE_P(Terman, PublishedProximity,
                         testing::Values(Butterworth{0.5, 0.00097, 1e-5}, Butterworth{0.6, 0.00202, 1e-5},
                                         Butterworth{0.7, 0.00373, 1e-5}, Butterworth{0.8, 0.00632, 2e-5},
                                         Butterworth{0.9, 0.01006, 1e-5}, Butterworth{1, 0.01519, 1e-5},
                                         Butterworth{2.5, 0.2949, 1e-4}, Butterworth{3, 0.4049, 2e-4},
                                         Butterworth{3.5, 0.4987, 4e-4}, Butterworth{4, 0.5842, 1e-4},
                                         Butterworth{5, 0.7550, 1e-4}));

TEST(PublishedProximity, ThinAndThickWire) {
    // Butterworth's limits (memory): G = x^4 / 64 for small x, (sqrt(2) x - 1) / 8 for large x. 1.5625e-6 at x = 0.1,
    // 17.5527 at x = 100; the limits themselves are off by 6e-6 and 2e-5 there (derived with SciPy's Bessel functions).
    const auto loss = [](double x) {
        const double diameter = 1 * millimetre, depth = std::numbers::sqrt2 * (diameter / 2) / x;
        const double frequency = copper / (pi * depth * depth * 4e-7 * pi);
        return field::transverseFieldFactor(frequency, diameter, copper).real() / (16 * pi * copper);
    };
    EXPECT_NEAR(loss(0.1), 1.5625e-6, 1e-5 * 1.5625e-6);
    EXPECT_NEAR(loss(100), 17.5527, 3e-5 * 17.5527);
}

TEST(PublishedField, OfALongStraightWire) {
    // 2e-7 T at 1 m from 1 A, the definition of the ampere until 2019: 1 / (2 pi) A/m. The wire stands 10 km before the
    // iron plane, whose image adds 5e-5 of that.
    const double far = 1e4;
    const field::CurrentBox wire{{far - 0.005, far + 0.005, -0.005, 0.005}, 1};
    const auto beside = field::openField({wire}, far + 1, {0});
    EXPECT_NEAR(4e-7 * pi * std::hypot(beside(0, 0), beside(1, 0)), 2e-7, 2e-7 * 1e-4);
    const auto above = field::openField({wire}, far, {1});
    EXPECT_NEAR(4e-7 * pi * std::hypot(above(0, 0), above(1, 0)), 2e-7, 2e-7 * 1e-4);
}

TEST(PublishedField, DoublesBeforeIron) {
    // A wire on an infinitely permeable plane has its image at its place: 4e-7 T at 1 m from 1 A (method of images).
    const field::CurrentBox wire{{0, 0.002, -0.001, 0.001}, 1};
    const auto beside = field::openField({wire}, 1, {0});
    EXPECT_NEAR(4e-7 * pi * std::hypot(beside(0, 0), beside(1, 0)), 4e-7, 4e-7 * 1e-5);
}

TEST(PublishedField, BetweenTwoWindingsOverTheWholeHeight) {
    // N I / h (Ampere): 100 A turns each way over 20 mm give 5000 A/m in the gap, half that in the middle of a winding.
    const std::vector<field::CurrentBox> coils{{{1e-3, 3e-3, 0, 20e-3}, 1}, {{4e-3, 6e-3, 0, 20e-3}, 1}};
    const field::WindowField window(coils, {8e-3, 20e-3}, 120);
    const auto axial = [&](double x) {
        const auto h = window.at(x, {7e-3});
        return std::abs(100 * (h(1, 0) - h(1, 1)));
    };
    EXPECT_NEAR(axial(3.5e-3), 5000, 1e-6);
    EXPECT_NEAR(axial(2e-3), 2500, 1e-6);
    EXPECT_NEAR(axial(0.5e-3), 0, 1e-6);
}

}  // namespace proximity_test
