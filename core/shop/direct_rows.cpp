// SPDX-License-Identifier: GPL-3.0-or-later
// Everything with direct current: continuity, resistance, insulation; and what it leaves in the core.
#include <algorithm>
#include <cmath>

#include "catalog/sheet.h"
#include "coil/wire_resistance.h"
#include "shop/plan_rows.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string celsius(double value) {
    return units::writeExact(units::Kind::Temperature, value);
}

const Expected* resistanceOf(const BenchState& state, const std::string& winding) {
    const auto at = state.figures.find("dcr." + winding);
    return at == state.figures.end() ? nullptr : &at->second;
}

void addContinuity(const PlanContext& context, const BenchState& state, RowList& list) {
    // A line that parts a winding from an open or a wrong one; resistance itself follows (common practice, no source).
    constexpr double line = 2;
    for (const auto& winding : context.design.windings) {
        const Expected* r = resistanceOf(state, winding.name);
        auto& row =
            list.add(TestOrder::Direct, "Continuity, " + context.winding(winding.name), "continuity." + winding.name);
        row.hookUp = joined(
            {"Ohmmeter at ", context.terminals(winding), " (", context.ends(winding), "); everything else open."});
        row.settings =
            joined({"at most ", units::writeExact(units::Kind::Current, context.fixture.meters.resistanceCurrent)});
        row.method = "An open winding first: nothing below means anything with one.";
        row.kind = units::Kind::Resistance;
        if (r == nullptr) continue;
        row.expected = r->value;
        row.high = line * r->value;
        row.origin = "twice the predicted resistance, a line that parts a winding from an open one";
    }
}

void addResistance(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& fixture = context.fixture;
    const double reference = context.design.conditions.temperature;
    // Of resistance by temperature, a kelvin.
    const double slope = coil::resistanceFactor(reference + 1) / coil::resistanceFactor(reference) - 1;
    for (const auto& winding : context.design.windings) {
        const Expected* r = resistanceOf(state, winding.name);
        if (r == nullptr) continue;
        auto& row =
            list.add(TestOrder::Direct, "DC resistance, " + context.winding(winding.name), "dcr." + winding.name);
        row.hookUp = joined({"Four wires at ", context.terminals(winding), "; everything else open."});
        row.settings = joined({"at most ", units::writeExact(units::Kind::Current, fixture.meters.resistanceCurrent),
                               "; wire temperature beside it"});
        row.method = joined({"Corrected to ", celsius(reference), ": divide by 1 + ", units::significant(slope, 3),
                             " (t − ", units::shortest(reference),
                             "). Short the winding before the meter is taken off: it stores energy."});
        const double instrument =
            std::hypot(fixture.doubts.resistance.at(r->value), r->value * slope * fixture.doubts.temperature);
        RowList::limit(row, window(*r, instrument, context.promised(row.name), Sides::Both, units::Kind::Resistance),
                       units::Kind::Resistance, r->value);
    }
}

void addInsulation(const PlanContext& context, RowList& list) {
    const auto& meters = context.fixture.meters;
    for (const auto& winding : context.design.windings) {
        auto& row = list.add(TestOrder::Direct, "Insulation resistance, " + context.winding(winding.name),
                             "insulation." + winding.name);
        row.hookUp = joined({"Between ", winding.start, " joined with ", winding.finish,
                             ", and all other windings, shields and the core joined together."});
        row.settings = joined({units::writeExact(units::Kind::Voltage, meters.insulationVoltage),
                               " direct; read after the charge has settled"});
        row.method = "Discharge before touching anything.";
        row.kind = units::Kind::Resistance;
        row.low = meters.insulationLeast;
        row.origin = "this shop's own least, from the fixture's file";
    }
}

}  // namespace

void addDirectRows(const PlanContext& context, const BenchState& state, bool last, RowList& list) {
    addContinuity(context, state, list);
    addResistance(context, state, list);
    addInsulation(context, list);
    if (last) addHipotRows(context, state, list);
}

void addDemagnetiseRow(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& generator = context.fixture.generator;
    const double frequency = std::max(20.0, generator.lowest);
    auto& row = list.add(TestOrder::Demagnetise, "Demagnetise", "demagnetise");
    const auto& longest = context.longest();
    const auto* sheet = design::part(context.design, context.design.core.sheet, context.shop);
    const double turns = design::conductorTurns(context.design, longest);
    if (sheet != nullptr)
        row.method = joined(
            {"The ohmmeter's ", units::writeExact(units::Kind::Current, context.fixture.meters.resistanceCurrent),
             " in ", turnsText(turns), " turns put ",
             units::significant(context.fixture.meters.resistanceCurrent * turns / catalog::pathLength(*sheet), 2),
             " A/m on the core. "});
    row.method +=
        "Let the level fall evenly to nothing over 10 s, without a switch in between; nothing with direct "
        "current after this. Repeat after any later ohmmeter.";
    row.hookUp = state.bench.hookUps.front().words;
    const auto most = state.figures.find("maximum_level_20Hz");
    const double level = most == state.figures.end() ? generator.level : std::min(most->second.value, generator.level);
    row.settings = joined({units::writeExact(units::Kind::Frequency, frequency), ", from ",
                           units::write(units::Kind::LevelDbu, level), " EMF"});
    if (most == state.figures.end())
        row.doubt = "the level at which the core saturates is not known: the generator's greatest is taken";
    else if (most->second.value > generator.level)
        row.doubt = joined({"the core saturates at ", units::write(units::Kind::LevelDbu, most->second.value),
                            ", which the generator does not reach: a strong remanence may stay"});
}

}  // namespace shop
