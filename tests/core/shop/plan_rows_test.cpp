// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of test plans against closed forms and against what was promised.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "plans.h"

namespace plan_rows_test {

using plans::demo;
using plans::made;
using plans::Made;

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}
bool any(const std::vector<std::string>& all, const std::string& words) {
    return std::any_of(all.begin(), all.end(), [&](const auto& one) { return has(one, words); });
}

/// Resistance goes with the bare diameter's square and with stretch; the rest (turn lengths) is small.
TEST(PlanRows, SpreadOfResistanceIsThatOfItsWire) {
    const Made& m = demo("microphone-input");
    for (const auto& winding : m.design.windings) {
        const auto* wire = design::part(m.design, winding.wire, demos::shopCatalog());
        ASSERT_NE(wire, nullptr);
        const auto& all = plans::tolerances().at("wire_diameter");
        double width = 0.01 * wire->bareDiameter;
        for (auto it = all.widths.rbegin(); it != all.widths.rend(); ++it)
            if (wire->bareDiameter <= it->upTo) width = it->plusMinus;
        const double stretch = plans::tolerances().at("wire_stretch").plusMinus;
        const double expected = 2.576 * std::hypot(2 * width / 2 / wire->bareDiameter, stretch / 2);
        const double tolerance = m.state().figures.at("dcr." + winding.name).tolerance;
        EXPECT_GT(tolerance, 0.98 * expected) << winding.name;
        EXPECT_LT(tolerance, 1.25 * expected) << winding.name;
    }
}

TEST(PlanRows, APromisedResistanceIsNeverPassedOver) {
    const Made& m = demo("direct-box");
    const auto& row = m.row("dcr.S");
    ASSERT_TRUE(row.high);
    EXPECT_LT(*row.high, 40);
    EXPECT_TRUE(has(row.origin, "promised to the customer") || *row.high < 39);
}

/// A unit with one turn more or less in either winding fails where the row does not say that it cannot tell.
TEST(PlanRows, AMiscountFromTheSaidNumberOfTurnsOnFailsTheRatio) {
    auto fixture = plans::bench();
    fixture.doubts.ratio = {1e-4, 0};
    const Made m = made(demos::demo("ribbon-step-up"), fixture);
    const auto& row = m.row("ratio.P.S");
    const double a = design::seriesTurns(m.design, m.design.windings[0]);
    const double b = design::seriesTurns(m.design, m.design.windings[1]);
    const auto reads = [&](double first, double second) { return std::abs(second / first); };
    EXPECT_GT(reads(a, b), *row.low);
    EXPECT_LT(reads(a, b), *row.high);
    EXPECT_GT(reads(a - 1, b), *row.high);
    EXPECT_LT(reads(a + 1, b), *row.low);
    if (!row.needed) {
        EXPECT_GT(reads(a, b + 1), *row.high);
        EXPECT_LT(reads(a, b - 1), *row.low);
        EXPECT_TRUE(has(row.method, "from 1 turn")) << row.method;
    }
}

TEST(PlanRows, ACoarseRatioMeterIsSaidNotToTellATurn) {
    auto fixture = plans::bench();
    fixture.doubts.ratio = {0.01, 0};
    const Made m = made(demos::demo("direct-box"), fixture);
    const auto& row = m.row("ratio.P.S");
    EXPECT_TRUE(has(row.doubt, "cannot tell a miscount of one turn")) << row.doubt;
    const double doubt = m.state().ratios.at("S").doubt;
    const auto turns = static_cast<long>(std::ceil(2 * (0.01 + doubt) * 5400));
    EXPECT_GE(turns, 108);
    EXPECT_TRUE(has(row.method, "from " + std::to_string(turns) + " turns")) << row.method;
    if (row.needed) {
        EXPECT_LT(*row.needed / *row.expected, 0.5 / 5400);
    }
}

/// A unit's ratio is read less than its turns say, by no more than leakage over inductance and the rise by capacitance.
TEST(PlanRows, TheRatioThatIsReadIsNearThatOfTheTurns) {
    for (const auto& name : plans::names())
        for (const auto& [winding, reading] : demo(name).state().ratios) {
            EXPECT_NEAR(reading.value / reading.turns, 1, 0.01) << name << " " << winding;
            EXPECT_LT(reading.doubt, 0.01) << name << " " << winding;
        }
}

TEST(PlanRows, WidthsOfDistortionResonanceAndResponseFollowTheTolerances) {
    auto wide = plans::tolerances();
    wide.at("permeability").plusMinus = 0.9;
    const Made& usual = demo("microphone-input");
    const Made wider = made(usual.design, usual.fixture, wide);
    EXPECT_GT(*wider.row("thd.20").high, 1.02 * *usual.row("thd.20").high);
    // At 1 kHz the sheets' eddy currents hide much of the permeability, and a resonance goes with the root.
    EXPECT_GT(*wider.row("resonance").high, 1.01 * *usual.row("resonance").high);
    EXPECT_LT(*wider.row("inductance_10Hz.P").low, *usual.row("inductance_10Hz.P").low);
    EXPECT_EQ(*wider.row("dcr.P").high, *usual.row("dcr.P").high);
}

TEST(PlanRows, ABetterInstrumentLeavesMoreOfTheWindow) {
    const Made& usual = demo("microphone-input");
    auto fixture = usual.fixture;
    fixture.doubts.inductance.share *= 10;
    const Made worse = made(usual.design, fixture);
    EXPECT_GT(*worse.row("inductance_10Hz.P").low, *usual.row("inductance_10Hz.P").low);
    EXPECT_LT(*worse.row("inductance_10Hz.P").high, *usual.row("inductance_10Hz.P").high);
}

/// A fixture that cannot make the customer's load, seen by hand: a divider of source and load on an ideal unit differs
/// by the loads' ratio, and so must the limits.
TEST(PlanRows, LimitsAreThoseOfTheFixturesHookUp) {
    auto fixture = plans::bench();
    fixture.plugIns = {};
    const Made own = made(demos::demo("ribbon-step-up"), fixture);
    const Made& like = demo("ribbon-step-up");
    EXPECT_TRUE(any(own.plan.bench, "the customer's load is not made")) << own.plan.bench.front();
    EXPECT_FALSE(any(like.plan.bench, "the customer's load is not made"));
    const double customer = own.answer->figure("gain_1kHz")->value;
    const double bench = own.state().answer->figure("gain_1kHz")->value;
    // 40 ohm instead of 0.2 ohm at the source: the secondary's load comes back through 1 : 30^2.
    EXPECT_GT(std::abs(bench - customer), 0.1);
    EXPECT_NEAR(*own.row("gain_1kHz").expected, bench, 1e-9);
    EXPECT_NEAR(*like.row("response.20").expected, like.state().response.front().expected.value, 1e-12);
}

TEST(PlanRows, APromisedLossMovesWithTheHookUpAndIsNeverWidened) {
    const Made& m = demo("line-unit");
    const auto& row = m.row("gain_1kHz");
    const double there = m.answer->figure("gain_1kHz")->value, loss = m.answer->figure("insertion_loss")->value;
    const double here = m.state().answer->figure("gain_1kHz")->value;
    // At most 1 dB of loss: at least the ideal transformer's level less 1 dB, moved.
    EXPECT_GE(*row.low, there + loss - 1 + here - there);
    const Made tight = [&] {
        auto design = m.design;
        for (auto& promise : design.brief.promises)
            if (promise.figure == "insertion_loss") promise.atMost = loss + 0.05;
        return made(design);
    }();
    EXPECT_NEAR(*tight.row("gain_1kHz").low,
                here - 0.05 + std::min(0.1, std::abs(here - there)) + m.fixture.doubts.level, 1e-6);
    EXPECT_TRUE(has(tight.row("gain_1kHz").origin, "promised loss"));
}

TEST(PlanRows, TheMaskAndThePromisedEndsOfTheBandAreMeasured) {
    const Made& m = demo("microphone-input");
    for (const char* name : {"response.20", "response.20000", "response.12", "response.60000"})
        EXPECT_NO_THROW((void)m.row(name)) << name;
    // The mask allows half a decibel, moved by less than a tenth between two nearly equal hook-ups.
    EXPECT_GE(*m.row("response.20").low, -0.6);
    EXPECT_LE(*m.row("response.20").high, 0.6);
    EXPECT_GE(*m.row("response.12").low, -3.2);
    EXPECT_TRUE(has(m.row("response.12").origin, "a promised end of the band"));
}

TEST(PlanRows, PortsThatAreOnlyLoadedAreToldWhenTheyStayOpen) {
    auto fixture = plans::bench();
    fixture.plugIns = {};
    const Made open = made(demos::demo("splitter"), fixture);
    EXPECT_TRUE(any(open.plan.bench,
                    "Port console 2: only loaded at the customer's: the fixture has no such load, it "
                    "stays OPEN here."));
    EXPECT_FALSE(any(demo("splitter").plan.bench, "OPEN"));
    EXPECT_NO_THROW((void)open.row("gain_1kHz@one output shorted"));
}

TEST(PlanRows, TheHighVoltageIsTheCustomersOrIsAskedFor) {
    const Made& stated = demo("microphone-input");
    const auto& row = stated.row("hipot.S");
    EXPECT_TRUE(row.settings.starts_with("250 V, 50 Hz")) << row.settings;
    // 250 V over 60 um.
    EXPECT_TRUE(has(row.method, "0.06 mm of ") && has(row.method, "4.2 kV/mm")) << row.method;
    EXPECT_TRUE(has(row.method, "every later test at most 200 V (80 %)")) << row.method;
    const auto inches = shop::testPlan(stated.design, *stated.answer, stated.prediction, demos::shopCatalog(),
                                       stated.fixture, {"2026-11-27", std::string(64, 'a'), {{true}, {}}});
    int told = 0;
    for (const auto& one : inches.stages.back().rows)
        if (one.name == "hipot.S") {
            ++told;
            EXPECT_TRUE(has(one.method, "0.0024 in (0.06 mm) of ") && has(one.method, "106 V/mil (4.2 kV/mm)"))
                << one.method;
        }
    EXPECT_EQ(told, 1);
    EXPECT_EQ(row.high, stated.fixture.meters.hipotTrip);
    const auto& silent = demo("direct-box").row("hipot.P");
    EXPECT_TRUE(has(silent.settings, "NOT STATED: ask the customer")) << silent.settings;
    EXPECT_FALSE(silent.high);
    EXPECT_FALSE(has(silent.method, "kV/mm"));
    auto design = stated.design;
    design.brief.isolation = "500 V, or 1 kV in the north";
    EXPECT_TRUE(has(made(design).row("hipot.P").settings, "more than one voltage stated: ask"));
}

/// 1 mA in 2700 + 2700 turns over the sheet's path: the figure that makes demagnetising necessary.
TEST(PlanRows, DemagnetisingSaysWhatTheOhmmeterDid) {
    const Made& m = demo("direct-box");
    const auto* sheet = design::part(m.design, m.design.core.sheet, demos::shopCatalog());
    const double field = 5400e-3 / catalog::pathLength(*sheet);
    EXPECT_TRUE(has(m.row("demagnetise").method, "in 5400 turns put " + std::to_string(std::lround(field)) + " A/m"))
        << m.row("demagnetise").method << field;
}

TEST(PlanRows, DistortionIsMeasuredWhereThePromiseIs) {
    const Made& m = demo("microphone-input");
    const auto *there = m.answer->figure("maximum_level_20Hz"), *here = m.state().answer->figure("maximum_level_20Hz");
    // Headroom of 35 dB over -40 dBu.
    EXPECT_NEAR(m.prediction.question.level, -5 + here->value - there->value, 1e-9);
    auto design = m.design;
    design.brief.maximumLevel.distortion = 0.5;
    const Made asked = made(design);
    EXPECT_LE(*asked.row("thd.20").high, 0.005);
}

TEST(PlanRows, AWeakGeneratorProvesNoPromise) {
    auto fixture = plans::bench();
    fixture.generator.level = -20;
    const Made m = made(demos::demo("microphone-input"), fixture);
    EXPECT_EQ(m.prediction.question.level, -20);
    EXPECT_TRUE(has(m.row("thd.20").method, "the promise itself is not proved"));
    EXPECT_TRUE(has(m.row("demagnetise").doubt, "which the generator does not reach"));
}

TEST(PlanRows, AFilledUnitIsTestedBeforeAndAfterAndItsCapacitanceRises) {
    auto design = demos::demo("ribbon-step-up");
    design.filling.emplace();
    design.filling->compound = catalog::PartRef<catalog::Insulation>("epoxy");
    if (demos::shopCatalog().insulation.find("epoxy") == demos::shopCatalog().insulation.end())
        for (const auto& [key, material] : demos::shopCatalog().insulation)
            if (material.form == catalog::InsulationForm::Compound)
                design.filling->compound = catalog::PartRef<catalog::Insulation>(key);
    const Made m = made(design);
    ASSERT_EQ(m.plan.stages.size(), 3u);
    EXPECT_EQ(m.plan.stages[1].name, "laminated");
    EXPECT_EQ(m.plan.stages[2].name, "filled");
    EXPECT_GT(*m.row("capacitance.P.S").expected, *m.row("capacitance.P.S", 1).expected);
    EXPECT_THROW((void)m.row("hipot.P", 1), std::out_of_range);
}

TEST(PlanRows, ACalibrationThatIsOverIsSaidFirst) {
    const Made& usual = demo("ribbon-step-up");
    EXPECT_FALSE(any(usual.plan.notes, "CALIBRATION OVER"));
    const auto late = shop::testPlan(usual.design, *usual.answer, usual.prediction, demos::shopCatalog(), usual.fixture,
                                     {"2027-04-01", std::string(64, 'a')});
    EXPECT_TRUE(has(late.notes.front(), "CALIBRATION OVER: impedance meter, since 2027-03-31"));
}

TEST(PlanRows, NoiseThatIsPromisedHasARowOrAReason) {
    const Made& m = demo("microphone-input");
    EXPECT_TRUE(has(m.row("noise_figure_1kHz").doubt, "no low-noise amplifier"));
    auto fixture = m.fixture;
    fixture.analyser.noise = 1e-9;
    const auto measured = shop::testPlan(m.design, *m.answer, m.prediction, demos::shopCatalog(), fixture,
                                         {"2026-11-27", std::string(64, 'a')});
    for (const auto& row : measured.stages.back().rows)
        if (row.name == "noise_figure_1kHz") {
            EXPECT_LE(row.high.value(), 2);
        }
}

}  // namespace plan_rows_test
