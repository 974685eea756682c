// SPDX-License-Identifier: GPL-3.0-or-later
// The enamel in a wire's cell against coaxial cable: with a filler that conducts as well as metal (relative
// permittivity 1e9) each wire stands in a tube of its own overall diameter, whatever else is there.
#include <gtest/gtest.h>

#include <cmath>

#include "field/wire_cell.h"

namespace enamel_test {

constexpr double inch = 25.4e-3, foot = 0.3048;

/// Capacitance per metre between a wire and the tube round its enamel.
std::complex<double> coaxial(double bare, double overall, std::complex<double> enamel) {
    field::RowCell c;
    c.bare = bare;
    c.overall = overall;
    c.pitch = 1.5 * overall;
    c.distance = overall;
    c.enamel = enamel;
    c.filler = 1e9;
    return field::rowCapacitance(c) * c.pitch;
}

TEST(PublishedEnamel, IsTheDielectricOfACoaxialCable) {
    // RG-59 of a table of cables (seen): conductor 0.023 in, solid polyethylene to 0.146 in, velocity factor 0.66
    // (relative permittivity 0.66^-2 = 2.296), 21 pF a foot: two digits.
    EXPECT_NEAR(coaxial(0.023 * inch, 0.146 * inch, 1 / (0.66 * 0.66)).real() * foot * 1e12, 21, 0.5);
}

TEST(PublishedEnamel, FollowsTheCablemakersRule) {
    // 7.36 eps / log10(D/d) pF a foot (seen, page on impedances inside coaxial line; three digits). Rows of RG-59 and
    // of magnet wire of 0.2 mm, 0.226 mm over enamel of 3.5.
    const auto perFoot = [](double bare, double overall, double enamel) {
        return coaxial(bare, overall, enamel).real() * foot * 1e12;
    };
    EXPECT_NEAR(perFoot(0.023 * inch, 0.146 * inch, 2.26), 20.724, 0.002 * 20.724);
    EXPECT_NEAR(perFoot(0.2e-3, 0.226e-3, 3.5), 485.3, 0.002 * 485.3);
}

TEST(PublishedEnamel, LossOfEnamelAloneIsItsOwn) {
    // A lossy dielectric between two electrodes without any other has its own tan delta (definition; closed form).
    const auto c = coaxial(0.2e-3, 0.226e-3, {3.5, -3.5 * 0.02});
    EXPECT_NEAR(-c.imag() / c.real(), 0.02, 1e-6);
}

}  // namespace enamel_test
