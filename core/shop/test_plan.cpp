// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/test_plan.h"

#include <algorithm>

#include "analysis/figure_names.h"
#include "shop/finishing.h"
#include "shop/plan_rows.h"
#include "units/csv_cell.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

PlanStage woundCoil(const PlanContext& context, std::set<std::size_t>& measured) {
    RowList list{{}, measured};
    addPolarityRows(context, nullptr, list);
    addDirectRows(context, context.prediction.states.front(), false, list);
    return {"wound coil", "Before the core goes in: what fails here costs the winding alone.", std::move(list.rows)};
}

/// A unit with its core, `last`: as it leaves the shop.
PlanStage withCore(const PlanContext& context, const BenchState& state, bool last, std::set<std::size_t>& measured) {
    RowList list{{}, measured};
    addPolarityRows(context, &state, list);
    addDirectRows(context, state, last, list);
    addDemagnetiseRow(context, state, list);
    addImpedanceRows(context, state, list);
    addResponseRows(context, state, list);
    addDistortionRows(context, state, list);
    addBalanceRows(context, state, list);
    PlanStage stage;
    stage.rows = std::move(list.rows);
    if (!context.design.filling) {
        stage.name = "laminated";
        stage.when = "With its core, fixed and labelled; the unit is not filled, so this is the last stage.";
    } else if (!last) {
        stage.name = "laminated";
        stage.when = "With its core, before it is filled: sheets and joints can still be mended. No high voltage yet.";
    } else {
        stage.name = "filled";
        stage.when = "After cure and cooling to the room. What moved since the stage before is the filling's doing.";
    }
    return stage;
}

std::vector<Fact> upkeepOf(const design::Fixture& fixture) {
    const auto& upkeep = fixture.upkeep;
    const auto celsius = [](double t) { return units::writeExact(units::Kind::Temperature, t); };
    std::vector<Fact> facts;
    facts.emplace_back("Soak", joined({units::shortest(upkeep.soakHours), " h in the room, ", celsius(upkeep.roomLow),
                                       " to ", celsius(upkeep.roomHigh)}));
    facts.emplace_back("Open and short", upkeep.openShort);
    facts.emplace_back("Daily reference", upkeep.reference);
    std::string dates;
    for (const auto& one : upkeep.calibrations)
        dates += joined({dates.empty() ? "" : "; ", one.instrument, " until ", one.until});
    facts.emplace_back("Calibration", dates);
    if (!fixture.note.empty()) facts.emplace_back("Fixture", fixture.note);
    return facts;
}

std::vector<std::string> overdue(const design::Fixture& fixture, const std::string& today) {
    std::vector<std::string> all;
    for (const auto& one : fixture.upkeep.calibrations)
        if (one.until < today)  // both as 2026-05-31
            all.push_back(joined(
                {"CALIBRATION OVER: ", one.instrument, ", since ", one.until, ". Nothing that it reads counts."}));
    return all;
}

PlanWiring wiringOf(const PlanContext& context, const BenchState& state) {
    PlanWiring wiring;
    wiring.words = state.bench.hookUps.front().words;
    const design::HookUp& hookUp = state.bench.design.hookUps.front();
    const auto onPort = [&](const std::string& port) {
        const auto& all = state.bench.hookUps.front().ports;
        const auto at = all.find(port);
        return at == all.end() ? std::string() : at->second;
    };
    wiring.generator = onPort(state.bench.driven);
    wiring.analyser = onPort(state.bench.observed);
    wiring.earthed = schematicOf(context.design, hookUp).earthed;
    for (const design::Port& port : context.design.ports) {
        auto& at = port.name == state.bench.driven     ? wiring.driven
                   : port.name == state.bench.observed ? wiring.observed
                                                       : wiring.others;
        at.insert(at.end(), {port.plus, port.minus});
    }
    for (const auto& use : hookUp.ports)
        if (use.port != state.bench.driven && use.port != state.bench.observed)
            wiring.othersWords += joined({wiring.othersWords.empty() ? "" : "; ", use.port, ": ", onPort(use.port)});
    return wiring;
}

std::vector<std::string> benchWords(const BenchState& state) {
    std::vector<std::string> all;
    for (const auto& hookUp : state.bench.hookUps) {
        all.push_back(joined({"“", hookUp.name, "”: ", hookUp.words}));
        all.insert(all.end(), hookUp.differences.begin(), hookUp.differences.end());
    }
    return all;
}

/// Promises and masks that no row proves.
std::vector<std::string> untestedOf(const PlanContext& context, const std::set<std::size_t>& measured,
                                    const std::vector<PlanRow>& rows) {
    std::vector<std::string> all;
    const auto& brief = context.design.brief;
    for (std::size_t k = 0; k < brief.promises.size(); ++k) {
        const auto& promise = brief.promises[k];
        const bool own = std::any_of(rows.begin(), rows.end(), [&](const PlanRow& row) {
            return row.name == promise.figure && (row.low || row.high);
        });
        if (own || measured.contains(k)) continue;
        const auto kind = analysis::kindOfFigure(promise.figure);
        std::string words = figureWords(promise.figure) + (promise.port.empty() ? "" : " at " + promise.port);
        if (!promise.hookUp.empty()) words += joined({" (", promise.hookUp, ")"});
        if (promise.atLeast) words += ", at least " + units::writeExact(kind, *promise.atLeast);
        if (promise.atMost) words += ", at most " + units::writeExact(kind, *promise.atMost);
        all.push_back(words + ": no row of this plan proves it on this fixture.");
    }
    for (const auto& mask : brief.masks) {
        const bool shown = mask.hookUp.empty() || mask.hookUp == context.design.hookUps.front().name;
        if (mask.trace == "response" && shown)
            all.emplace_back("Mask on the response: proved at its corners alone; between them sweep and look.");
        else
            all.push_back(joined({"Mask on ", mask.trace, mask.hookUp.empty() ? "" : " (" + mask.hookUp + ")",
                                  ": no row of this plan proves it."}));
    }
    return all;
}

/// What the standards are known to say here. Their text was not at hand: what stands in public summaries of them.
std::vector<std::string> notesOfPlan() {
    return {
        "Limits: expected value with the model's own doubt and the spread of 99 % of units, drawn in by a guard band "
        "as "
        "wide as the instrument's 95 % doubt (acceptance limit = tolerance limit − guard band: ILAC-G8:09/2019, 4.2). "
        "Mistakes in turns are not in the spread: they are to be found.",
        "IEC 61007:2020 (its scope, read) covers electric strength, resistance, inductance, impedance, balance and "
        "transformation ratio; a public summary of its edition of 1994 has leakage inductance measured with the other "
        "windings short-circuited. IEEE 389-1996 (its abstract, read) names resistance, insulation, inductance, "
        "self-resonance, transformer capacitance, common-mode rejection and noise tests. Their clauses were not read: "
        "where a contract names one of them, it rules over the method here.",
        "The order is binding: nothing with direct current after “Demagnetise”."};
}

}  // namespace

TestPlan testPlan(const design::Design& design, const analysis::Answer& answer, const PlanPrediction& prediction,
                  const catalog::Catalog& shop, const design::Fixture& fixture, const Issue& issue) {
    const PlanContext context{
        design, answer, prediction, shop, fixture, windingRoles(design, design.hookUps.front()), issue.manner.in};
    TestPlan plan;
    plan.head = paperHead("Test plan", design, issue);
    plan.fixture = fixture.title;
    plan.upkeep = upkeepOf(fixture);
    const BenchState& last = prediction.states.back();
    plan.bench = benchWords(last);
    plan.wiring = wiringOf(context, last);
    std::set<std::size_t> measured;
    plan.stages.push_back(woundCoil(context, measured));
    for (const BenchState& state : prediction.states)
        plan.stages.push_back(withCore(context, state, &state == &last, measured));
    int step = 0;
    for (auto& stage : plan.stages)
        for (auto& row : stage.rows) row.step = ++step;
    plan.untested = untestedOf(context, measured, plan.stages.back().rows);
    if (!design.conditions.directCurrents.empty() || design.conditions.phantom)
        plan.untested.emplace_back("With direct current or phantom supply: not measured, the bench has none.");
    plan.notes = overdue(fixture, issue.date);
    for (auto& note : notesOfPlan()) plan.notes.push_back(std::move(note));
    plan.cautions = testCautions();
    return plan;
}

std::string limitText(units::Kind kind, double value) {
    if (kind == units::Kind::Share) return units::significant(100 * value, 2) + " %";
    return kind == units::Kind::Number ? units::significant(value, 5) : units::write(kind, value, 4);
}

std::string limitsCsv(const TestPlan& plan) {
    std::string text = "step,stage,test,name,settings,low,high,unit\n";
    for (const auto& stage : plan.stages)
        for (const auto& row : stage.rows) {
            const bool percent = row.kind == units::Kind::Share;
            const auto cell = [&](const std::optional<double>& limit) {
                return limit ? units::csvCell(*limit * (percent ? 100 : 1)) : std::string();
            };
            text += joined({std::to_string(row.step), ",", units::csvCell(stage.name), ",", units::csvCell(row.what),
                            ",", units::csvCell(row.name), ",", units::csvCell(row.settings), ",", cell(row.low), ",",
                            cell(row.high), ",",
                            !row.low && !row.high ? std::string_view()
                            : percent             ? "%"
                                                  : units::unit(row.kind),
                            "\n"});
        }
    return text;
}

}  // namespace shop
