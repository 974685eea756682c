// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot be in one entry.
#include <gtest/gtest.h>

#include "catalog/entry_check.h"

namespace entry_check_test {

using Faults = std::vector<units::Fault>;

template <class Part>
Faults faultsOf(const Part& part) {
    Faults faults;
    catalog::check(part, "f: /e", faults);
    return faults;
}

catalog::Alloy alloy() {
    catalog::Alloy a;
    a.initialPermeability = 1000;
    a.maximumPermeability = 5000;
    a.saturation = 2;
    a.remanence = 1;
    a.curve = {{0, 0}, {100, 0.5}, {1000, 1.9}};
    return a;
}

TEST(AlloyCheck, TakesARisingCurve) {
    EXPECT_EQ(faultsOf(alloy()), Faults{});
}

TEST(AlloyCheck, CurveStartsAtZero) {
    auto a = alloy();
    a.curve.front() = {1, 0};
    EXPECT_EQ(faultsOf(a), (Faults{{"f: /e/curve/0", "[1, 0]", "[0, 0]"}}));
}

TEST(AlloyCheck, CurveRisesInFieldAndFlux) {
    auto a = alloy();
    a.curve[2] = {1000, 0.5};
    EXPECT_EQ(faultsOf(a),
              (Faults{{"f: /e/curve/2", "[1000, 0.5]", "more than [100, 0.5] in field and in flux density"}}));
    a.curve[2] = {100, 0.6};
    EXPECT_EQ(faultsOf(a),
              (Faults{{"f: /e/curve/2", "[100, 0.6]", "more than [100, 0.5] in field and in flux density"}}));
}

TEST(AlloyCheck, CurveStaysBelowSaturation) {
    auto a = alloy();
    a.curve[2] = {1000, 2.1};
    const auto faults = faultsOf(a);
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults[0].place, "f: /e/curve/2");
}

TEST(AlloyCheck, OnePointIsNoCurve) {
    auto a = alloy();
    a.curve.resize(1);
    EXPECT_EQ(faultsOf(a), (Faults{{"f: /e/curve", "one point", "two points or more"}}));
}

TEST(AlloyCheck, ComparesPermeabilitiesAndRemanence) {
    auto a = alloy();
    a.maximumPermeability = 900;
    a.remanence = 2.5;
    EXPECT_EQ(faultsOf(a), (Faults{{"f: /e/maximum_permeability", "900", "at least the initial permeability, 1000"},
                                   {"f: /e/remanence", "2.5", "at most the saturation, 2 T"}}));
}

TEST(WireCheck, OrdersTheDiameters) {
    catalog::Wire w;
    w.bareDiameter = 0.0002;
    w.overallDiameter = 0.00022;
    EXPECT_EQ(faultsOf(w), Faults{});
    w.overallMinimum = 0.00023;
    w.overallMaximum = 0.00021;
    EXPECT_EQ(faultsOf(w),
              (Faults{{"f: /e/overall_diameter", "0.00022", "at least the smallest overall diameter, 0.00023 m"},
                      {"f: /e/overall_maximum", "0.00021", "at least the overall diameter, 0.00022 m"},
                      {"f: /e/overall_maximum", "0.00021", "at least the smallest overall diameter, 0.00023 m"}}));
    w = {};
    w.bareDiameter = 0.0002;
    w.overallDiameter = 0.0001;
    EXPECT_EQ(faultsOf(w), (Faults{{"f: /e/overall_diameter", "0.0001", "at least the bare diameter, 0.0002 m"}}));
}

TEST(BobbinCheck, ChambersStandInOrder) {
    catalog::Bobbin b;
    EXPECT_EQ(faultsOf(b), (Faults{{"f: /e/chambers", "an empty list", "at least one chamber"}}));
    b.chambers = {{0.001, 0.01}, {0.012, 0.02}};
    EXPECT_EQ(faultsOf(b), Faults{});
    b.chambers = {{0.001, 0.01}, {0.009, 0.02}};
    EXPECT_EQ(faultsOf(b),
              (Faults{{"f: /e/chambers/1/low", "0.009", "at least the high end of the chamber before, 0.01 m"}}));
    b.chambers = {{0.01, 0.01}};
    EXPECT_EQ(faultsOf(b), (Faults{{"f: /e/chambers/0/high", "0.01", "more than the low end, 0.01 m"}}));
}

TEST(BobbinCheck, PinNumbersOnceEach) {
    catalog::Bobbin b;
    b.chambers = {{0.001, 0.01}};
    b.pins = {{1, 0, 0, "low"}, {2, 0.005, 0, "left"}, {1, 0.01, 0, ""}};
    EXPECT_EQ(faultsOf(b), (Faults{{"f: /e/pins/1/row", "\"left\"", "\"low\" or \"high\""},
                                   {"f: /e/pins/2/number", "1", "a pin number that no other pin has"}}));
}

TEST(SheetCheck, OwnPathLiesInTheSheet) {
    catalog::Sheet s;
    s.tongue = 0.016;
    s.windowWidth = 0.008;
    s.windowHeight = 0.024;
    s.outerLeg = s.yoke = 0.008;
    s.pathLength = 0.094;
    EXPECT_EQ(faultsOf(s), Faults{});
    s.pathLength = 0.94;  // a slip of the decimal sign
    EXPECT_EQ(faultsOf(s).size(), 1U);
}

TEST(InsulationCheck, SheetsHaveAThickness) {
    catalog::Insulation i;
    i.form = catalog::InsulationForm::Paper;
    EXPECT_EQ(faultsOf(i),
              (Faults{{"f: /e/thicknesses", "nothing", "at least one stock thickness in m for a film or paper"}}));
    i.form = catalog::InsulationForm::Varnish;
    EXPECT_EQ(faultsOf(i), Faults{});
}

TEST(FittingCheck, AHousingHasRoomAndALoopAStrip) {
    catalog::Fitting f;
    f.form = catalog::FittingForm::Can;
    f.width = f.length = 0.04;
    f.height = 0.03;
    f.thickness = 0.001;
    f.resistivity = 5.6e-7;
    EXPECT_EQ(faultsOf(f), Faults{});
    f.thickness = 0.015;
    EXPECT_EQ(
        faultsOf(f),
        (Faults{{"f: /e/thickness", "0.015", "less than half of its smallest size, 0.03 m: the unit stands inside"}}));
    f.form = catalog::FittingForm::Clamp;
    f.thickness = 0.001;
    EXPECT_EQ(faultsOf(f),
              (Faults{{"f: /e/strip", "0",
                       "more than 0 m for metal that may close a loop round iron: its resistance is computed"}}));
    f.strip = 0.005;
    f.round = catalog::Round::Tongue;
    EXPECT_EQ(faultsOf(f), Faults{});
    f.strip = 0;
    f.resistivity = 0;
    EXPECT_EQ(faultsOf(f), Faults{});
    f.form = catalog::FittingForm::Bolt;
    EXPECT_EQ(faultsOf(f),
              (Faults{{"f: /e/round", "a bolt that goes round by itself",
                       "\"nothing\": what bolts close with other parts is found where a design uses them"}}));
}

TEST(SundryCheck, EachFormHasItsSizes) {
    catalog::Sundry s;
    s.copper = 1.4e-7;
    s.diameter = 0.0004;  // copper alone takes 0.422 mm
    const Faults thin = faultsOf(s);
    ASSERT_EQ(thin.size(), 1U);
    EXPECT_EQ(thin[0].place, "f: /e/diameter");
    EXPECT_EQ(thin[0].allowed.substr(0, 15), "more than 0.000");
    s.diameter = 0.0011;
    EXPECT_EQ(faultsOf(s), Faults{});
    s.copper = 0;
    EXPECT_EQ(faultsOf(s), (Faults{{"f: /e/copper", "0", "more than 0 m2 of copper in a lead"}}));
    s.form = catalog::SundryForm::Sleeving;
    s.bore = 0.002;
    EXPECT_EQ(faultsOf(s), (Faults{{"f: /e/diameter", "0.0011", "more than 0.002 m, its bore"}}));
    s.form = catalog::SundryForm::Tape;
    s.width = 0.012;
    EXPECT_EQ(faultsOf(s), (Faults{{"f: /e/thickness", "0", "more than 0 m, of tape"}}));
}

}  // namespace entry_check_test
