// SPDX-License-Identifier: GPL-3.0-or-later
// Section 5 and 14 of the check values: elementary field theory, rows [derived] unless said otherwise.
#include "field/capacitance.h"

#include <gtest/gtest.h>

#include "field/wire_cell.h"

namespace capacitance_test {

constexpr double mm = 1e-3;
constexpr double area = 60e-3 * 20e-3;

void expectWithin(double value, double expected, double share) {
    EXPECT_NEAR(value / expected, 1, share);
}

field::RowCell plates(double distance, double filler) {
    field::RowCell c;
    c.distance = distance;
    c.filler = filler;
    return c;
}

// C-PP1 [derived]: eps0 eps A / d.
TEST(PublishedCapacitance, parallelPlates) {
    expectWithin(field::rowCapacitance(plates(0.1 * mm, 3.5)).real() * area, 371.8759e-12, 1e-5);
}

// C-PP2 [derived]: eps0 A / sum(d/eps), 0.02 mm of 3.5 and 0.05 mm of 2.5.
TEST(PublishedCapacitance, twoDielectricsInSeries) {
    auto c = plates(0.07 * mm, 3.5);
    c.sheet = 0.05 * mm;
    c.sheetPermittivity = 2.5;
    expectWithin(field::rowCapacitance(c).real() * area, 413.1955e-12, 1e-5);
}

// C-PP3 [derived]: 1 cm2 of foil on 0.05 mm of 3.2, through a whole coil build.
TEST(PublishedCapacitance, foilToFoilOfACoil) {
    coil::CoilBuild build;
    build.windowWidth = 20 * mm;
    build.windowHeight = 20 * mm;
    build.tongue = build.stack = 10 * mm;
    for (const double x : {5.0 * mm, 5.1 * mm}) {
        coil::Foil foil;
        foil.conductor.foil = true;
        foil.conductor.bare = foil.conductor.overall = 0.05 * mm;
        foil.box = {x, x + 0.05 * mm, 5 * mm, 15 * mm};
        foil.turnLength =
            10 * mm + 2 * 3.14159265358979 * (foil.box.middle() - 5.075 * mm);  // 10 mm in the gap's middle
        build.foils.push_back(foil);
    }
    build.dielectrics.push_back({{5.05 * mm, 5.1 * mm, 5 * mm, 15 * mm}, 3.2, 0, 1, 1, false, "film"});
    double total = 0;
    for (const auto& f : field::capacitances(build, false).facings)
        if (f.a.kind == field::Body::Kind::Foil && f.b.kind == field::Body::Kind::Foil) total += f.total.real();
    expectWithin(total, 56.6668e-12, 1e-5);
}

/// Two parallel wires are one wire before the plane half-way, at half the capacitance; a row so sparse that the other
/// wires of it do not count.
double twoWires(double spacingOverDiameter) {
    field::RowCell c;
    c.bare = c.overall = 1 * mm;
    c.pitch = 1000 * c.bare * spacingOverDiameter;
    c.distance = spacingOverDiameter * c.bare / 2;
    return field::rowCapacitance(c).real() * c.pitch / 2;
}

// C-TW1.1, C-TW1.5, C-TW2, C-TW5 [derived]: pi eps0 / arccosh(s/d).
TEST(PublishedCapacitance, twoParallelWires) {
    expectWithin(twoWires(1.1), 62.71019e-12, 1e-5);
    expectWithin(twoWires(1.5), 28.90229e-12, 1e-5);
    expectWithin(twoWires(2), 21.12160e-12, 1e-5);
    expectWithin(twoWires(5), 12.13395e-12, 1e-5);
}

// V-3 [derived]: a gap of 26 um enamel (3.5) and 20 um mean air, air replaced by 3.2.
TEST(PublishedCapacitance, fillingAnAirGap) {
    auto c = plates(46e-6, 1);
    c.sheet = 26e-6;
    c.sheetPermittivity = 3.5;
    const auto air = field::rowCapacitance(c).real();
    c.filler = 3.2;
    expectWithin(field::rowCapacitance(c).real() / air, 2.005222, 1e-6);
}

// V-4 [derived]: filling multiplies by its permittivity at most; nearly so with hardly any enamel and much air.
TEST(PublishedCapacitance, fillingIsBoundedByItsPermittivity) {
    const auto ratio = [](double overall, double pitch) {
        return field::turnCapacitance(0.2 * mm, overall, pitch, 3.5, 3.2).real() /
               field::turnCapacitance(0.2 * mm, overall, pitch, 3.5, 1).real();
    };
    EXPECT_LT(ratio(0.226 * mm, 0.226 * mm), 3.2);
    EXPECT_GT(ratio(0.226 * mm, 0.226 * mm), 1.0);
    EXPECT_LT(ratio(0.2002 * mm, 0.4 * mm), 3.2);
    EXPECT_GT(ratio(0.2002 * mm, 0.4 * mm), 3.17);
}

// Thin wires of alternating sign in a row: potential (q / 2 pi eps) ln tan(pi r / 2 p), so q = pi eps V / ln(2 p / pi
// a) for V between neighbours; half of it counts here. [derived; classical, W. R. Smythe's method of conjugate
// functions, memory]. Radius p/100, enamel like the filler: 3 pi eps0 / (2 ln(63.66198)) = 10.0454 pF/m.
TEST(PublishedCapacitance, rowOfThinWiresOfAlternatingSign) {
    expectWithin(field::turnCapacitance(0.02 * mm, 0.02 * mm, 1 * mm, 3, 3).real(), 10.0454e-12, 2e-4);
}

}  // namespace capacitance_test
