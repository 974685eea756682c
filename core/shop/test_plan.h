// SPDX-License-Identifier: GPL-3.0-or-later
// What is measured on a unit, in which order, how, and within which limits. An inside paper, of the shop's test bench.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/fixture.h"
#include "shop/bench_prediction.h"
#include "shop/datasheet.h"
#include "shop/paper_head.h"

namespace shop {

/// The order within a stage is part of the plan: direct current magnetises the core, so all of it comes before the core
/// is demagnetised, and every measurement of the core after that.
enum class TestOrder { Polarity, Direct, Demagnetise, Signal };

/// One thing to do.
struct PlanRow {
    int step = 0;  ///< through all stages, from 1
    TestOrder order = TestOrder::Polarity;
    std::string what;      ///< in plain words: "DC resistance, primary (P)"
    std::string name;      ///< for machines: a figure's name, or one alike: "dcr.P", "response.20"
    std::string hookUp;    ///< what is driven, loaded, shorted, open
    std::string settings;  ///< of the instrument
    std::string method;
    std::optional<double> expected, low, high;
    units::Kind kind = units::Kind::Number;
    std::string origin;            ///< where the limits come from; "" where the row has none
    std::string doubt;             ///< what it cannot tell
    std::optional<double> needed;  ///< half width of an instrument that could tell more
    bool operator==(const PlanRow&) const = default;
};

struct PlanStage {
    std::string name;  ///< "wound coil", "laminated", "filled"
    std::string when;  ///< what was done before, and what these tests can still save
    std::vector<PlanRow> rows;
    bool operator==(const PlanStage&) const = default;
};

/// The fixture as it is drawn: generator, unit with its ports, analyser.
struct PlanWiring {
    std::string words;                                  ///< the first hook-up: rows made in it say just this
    std::string generator, analyser;                    ///< what stands in their boxes
    std::vector<std::string> driven, observed, others;  ///< terminals, plus first
    std::string othersWords;                            ///< what hangs on `others`
    std::vector<std::string> earthed;
    bool operator==(const PlanWiring&) const = default;
};

struct TestPlan {
    PaperHead head;
    std::string fixture;             ///< its title
    std::vector<Fact> upkeep;        ///< soak, checks, reference unit, calibration
    std::vector<std::string> bench;  ///< how the customer's hook-ups are made here, and what differs
    PlanWiring wiring;
    std::vector<PlanStage> stages;
    std::vector<std::string> untested;  ///< what the brief promises and this plan does not measure, with the reason
    std::vector<std::string> notes, cautions;
    bool operator==(const TestPlan&) const = default;
};

/// Everything that is predicted for a plan.
struct PlanPrediction {
    std::vector<BenchState> states;  ///< laminated; and filled, where the design has a filling
    BenchQuestion question;
    std::string levelWords;  ///< why distortion is measured at that level
};

/// The fixture's hook-up in every state, with the spread of units, computed once. `answer`: of the design in the
/// customer's first hook-up.
[[nodiscard]] PlanPrediction planPrediction(const design::Design& design, const analysis::AnswerPtr& answer,
                                            const catalog::Catalog& shop, const catalog::Tolerances& tolerances,
                                            const design::Fixture& fixture);

/// The plan of a checked design.
[[nodiscard]] TestPlan testPlan(const design::Design& design, const analysis::Answer& answer,
                                const PlanPrediction& prediction, const catalog::Catalog& shop,
                                const design::Fixture& fixture, const Issue& issue);

/// A row a step for a sequencer: step, stage, test, name, settings, low, high, unit; SI units, distortion in per cent.
[[nodiscard]] std::string limitsCsv(const TestPlan& plan);

/// "1.23 kΩ" or, of a distortion, "0.12 %".
[[nodiscard]] std::string limitText(units::Kind kind, double value);

}  // namespace shop
