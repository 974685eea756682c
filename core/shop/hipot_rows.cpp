// SPDX-License-Identifier: GPL-3.0-or-later
// The voltage test. Its voltage is the customer's, never ours.
#include <cmath>
#include <numbers>

#include "shop/hipot.h"
#include "shop/plan_rows.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string volts(double value) {
    return units::write(units::Kind::Voltage, value);
}

/// Capacitance of a winding to all else, F.
double capacitanceOf(const BenchState& state, const std::string& winding) {
    double sum = 0;
    for (const auto& [name, expected] : state.figures)
        if (name.starts_with("capacitance.") &&
            (name.starts_with("capacitance." + winding + ".") || name.ends_with("." + winding)))
            sum += expected.value * (1 + std::hypot(expected.model, expected.tolerance));
    return sum;
}

/// Where the insulation is thinnest, and what the voltage means there.
std::string weakestWords(const PlanContext& context, const BarrierBetween* weakest, std::optional<double> voltage) {
    if (weakest == nullptr) return "No other conductor lies next to it in its chamber: the bobbin's wall insulates.";
    std::string words =
        joined({"Thinnest insulation: ", context.electrode(weakest->a), " / ", context.electrode(weakest->b), ", "});
    if (weakest->plies == 0) return words + "wire enamel alone: no insulation to test with high voltage.";
    words += joined({context.in.both(weakest->thickness, 2), " of ", weakest->material});
    if (voltage)
        words += joined({", ", context.in.stress(*voltage / weakest->thickness),
                         ": hold that against the material's own data sheet (the catalog knows no strength)"});
    if (!(weakest->margin > 0)) words += "; no margin at the flange, the way round its edge is the enamel's";
    return words + ".";
}

}  // namespace

void addHipotRows(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& meters = context.fixture.meters;
    const std::string& brief = context.design.brief.isolation;
    const auto stated = statedVoltages(brief);
    const auto barriers = barriersOf(context.design, context.shop);
    std::optional<double> voltage;
    if (stated.size() == 1) voltage = stated.front();
    for (const auto& winding : context.design.windings) {
        auto& row =
            list.add(TestOrder::Direct, "High-voltage test, " + context.winding(winding.name), "hipot." + winding.name);
        row.hookUp = joined({"Between ", winding.start, " joined with ", winding.finish,
                             ", and all other windings, shields and the core joined and earthed."});
        row.method = weakestWords(context, weakestOf(barriers, winding.name), voltage);
        row.kind = units::Kind::Current;
        const std::string said =
            brief.empty() ? "the brief says nothing of isolation" : joined({"the brief says “", brief, "”"});
        if (!voltage) {
            row.settings = stated.empty() ? "voltage NOT STATED: ask the customer for it and for his standard"
                                          : "more than one voltage stated: ask the customer which holds here";
            row.doubt = said + "; do not test before the voltage is settled";
            continue;
        }
        const bool direct = !(meters.hipotFrequency > 0);
        row.settings =
            joined({volts(*voltage),
                    direct ? " direct" : ", " + units::writeExact(units::Kind::Frequency, meters.hipotFrequency),
                    ", up in ", units::writeExact(units::Kind::Time, meters.hipotRamp), ", held ",
                    units::writeExact(units::Kind::Time, meters.hipotDwell), ", down before touching; trip ",
                    units::writeExact(units::Kind::Current, meters.hipotTrip)});
        row.high = meters.hipotTrip;
        row.origin = joined({"voltage: ", said, "; times and trip: ", meters.hipotSource});
        row.method += joined(
            {" Full voltage ONCE in a unit's life; every later test at most ", volts(meters.hipotRepeat * *voltage),
             " (", units::significant(100 * meters.hipotRepeat, 2), " %). Trained persons only, behind a guard; ",
             "local code and the customer's standard rule over this row."});
        const double charge =
            2 * std::numbers::pi * meters.hipotFrequency * capacitanceOf(state, winding.name) * *voltage;
        if (charge > meters.hipotTrip / 2)
            row.doubt = joined({"its capacitance alone draws up to ", units::write(units::Kind::Current, charge),
                                ": the trip current is too near"});
        if (const auto* weakest = weakestOf(barriers, winding.name); weakest != nullptr && weakest->plies == 0)
            row.doubt += joined(
                {row.doubt.empty() ? "" : "; ", "it is wound together with another winding: ask before testing"});
    }
}

}  // namespace shop
