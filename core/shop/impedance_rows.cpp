// SPDX-License-Identifier: GPL-3.0-or-later
// What an impedance meter reads: inductance, leakage, capacitance, resonance, impedance of a port.
#include <cmath>
#include <numbers>

#include "catalog/sheet.h"
#include "shop/plan_rows.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

constexpr double weakFlux = 1e-3;  // T, peak: permeability is still the initial one (common practice, no source)

/// Voltage at which the core's peak flux is `weakFlux`: V = 2 pi f N A B / sqrt 2.
double weakVoltage(const PlanContext& context, double turns, double frequency) {
    const auto& core = context.design.core;
    const auto* sheet = design::part(context.design, core.sheet, context.shop);
    if (sheet == nullptr) return 0;
    return std::numbers::sqrt2 * std::numbers::pi * frequency * turns * sheet->tongue * core.height *
           core.stackingFactor * weakFlux;
}

void addInductance(const PlanContext& context, const BenchState& state, RowList& list) {
    for (const auto& winding : context.design.windings)
        for (const auto& [stem, frequency] :
             {std::pair{"inductance_10Hz.", 10.0}, std::pair{"inductance_1kHz.", 1e3}}) {
            const std::string name = stem + winding.name;
            const Promised promised = context.promised(name);
            const bool driven = context.roles.at(winding.name).driven;
            const auto at = state.figures.find(name);
            if (at == state.figures.end() || !(driven || promised.atLeast || promised.atMost)) continue;
            const std::string hertz = units::writeExact(units::Kind::Frequency, frequency);
            auto& row =
                list.add(TestOrder::Signal, joined({"Inductance, ", context.winding(winding.name), ", ", hertz}), name);
            const double turns = std::abs(design::seriesTurns(context.design, winding));
            const double voltage = weakVoltage(context, turns, frequency);
            const double meter = context.fixture.meters.leastVoltage;
            row.hookUp = joined({"Impedance meter at ", context.terminals(winding), "; everything else open."});
            row.settings = joined({hertz, ", at most ", units::write(units::Kind::Voltage, std::max(voltage, meter), 2),
                                   "; series inductance; no direct current"});
            row.method = "After demagnetising. In weak fields: more voltage reads more inductance.";
            const Expected& e = at->second;
            RowList::limit(row,
                           window(e, context.fixture.doubts.inductance.at(e.value), promised, Sides::Both,
                                  units::Kind::Inductance),
                           units::Kind::Inductance, e.value);
            if (meter > voltage)
                row.doubt += joined({row.doubt.empty() ? "" : "; ",
                                     "the meter's least voltage drives the core beyond "
                                     "weak fields (",
                                     units::write(units::Kind::Voltage, voltage, 2),
                                     " would not): the reading is too high by what permeability grows"});
        }
}

void addLeakage(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& windings = context.design.windings;
    for (std::size_t a = 0; a < windings.size(); ++a)
        for (std::size_t b = a + 1; b < windings.size(); ++b) {
            const std::string name = joined({"leakage_10kHz.", windings[a].name, ".", windings[b].name});
            const auto at = state.figures.find(name);
            if (at == state.figures.end()) continue;
            auto& row = list.add(TestOrder::Signal,
                                 joined({"Leakage inductance, ", context.winding(windings[a].name), ", ",
                                         context.winding(windings[b].name), " shorted"}),
                                 name);
            row.hookUp = joined({"Impedance meter at ", context.terminals(windings[a]), "; ",
                                 context.terminals(windings[b]), " shorted with the shortest wire there is; ",
                                 "the rest open; straps, shields and core as in use."});
            row.settings = "10 kHz, series inductance; fixture short stored";
            row.method = "Tells a section in the wrong place: the order of sections sets it, not the turns alone.";
            const Expected& e = at->second;
            RowList::limit(row,
                           window(e, context.fixture.doubts.inductance.at(e.value), context.promised(name), Sides::Both,
                                  units::Kind::Inductance),
                           units::Kind::Inductance, e.value);
        }
}

/// Pairs of windings, and of a winding and a shield; others only if promised.
void addCapacitance(const PlanContext& context, const BenchState& state, RowList& list) {
    for (const auto& figure : state.answer->figures) {
        if (!figure.name.starts_with("capacitance.") || !std::isfinite(figure.value)) continue;
        const std::string pair = figure.name.substr(std::string("capacitance.").size());
        const auto dot = pair.find('.');
        const std::string a = pair.substr(0, dot), b = pair.substr(dot + 1);
        const Promised promised = context.promised(figure.name);
        const bool winding = design::winding(context.design, a) != nullptr;
        if (!(winding && b != "core") && !promised.atLeast && !promised.atMost) continue;
        const Expected& e = state.figures.at(figure.name);
        auto& row =
            list.add(TestOrder::Signal, joined({"Capacitance, ", context.electrode(a), " to ", context.electrode(b)}),
                     figure.name);
        row.hookUp = joined({"Three-terminal: high on ", a, ", low on ", b,
                             ", each winding's ends joined; all other windings, shields and the core on guard."});
        row.settings = "1 kHz, 1 V, parallel capacitance; fixture open stored";
        row.method = design::winding(context.design, b) == nullptr ? "Also tells a shield whose lead is open."
                                                                   : "Also tells thin or missing insulation between.";
        RowList::limit(
            row,
            window(e, context.fixture.doubts.capacitance.at(e.value), promised, Sides::Both, units::Kind::Capacitance),
            units::Kind::Capacitance, e.value);
    }
}

void addResonance(const PlanContext& context, const BenchState& state, RowList& list) {
    if (state.bench.driven.empty()) return;
    auto& row = list.add(TestOrder::Signal, joined({"Self-resonance, port ", state.bench.driven}), "resonance");
    const auto* port = design::port(context.design, state.bench.driven);
    row.hookUp = joined({"Impedance meter at ", port->plus, " to ", port->minus, " with ",
                         units::write(units::Kind::Capacitance, context.fixture.analyser.cable),
                         " of leads; other ports open; straps and earths as in use."});
    row.settings = "sweep upward from 100 Hz; first frequency at which the angle passes 0°";
    row.method = "Below it the port is inductive, above it capacitive. A shorted turn damps it and moves it up.";
    row.kind = units::Kind::Frequency;
    const auto& e = state.resonance;
    if (!e || e->value < context.fixture.generator.lowest || e->value > context.fixture.generator.highest) {
        row.doubt = e ? "predicted outside the fixture's frequencies: not measured here"
                      : "the angle is not predicted to pass 0° up to 1 MHz: not measured";
        return;
    }
    RowList::limit(row, window(*e, context.fixture.doubts.frequency.at(e->value), {}, Sides::Both, row.kind), row.kind,
                   e->value);
}

/// Only where promised.
void addPortImpedance(const PlanContext& context, const BenchState& state, RowList& list) {
    for (const auto& promise : context.design.brief.promises) {
        if (!promise.figure.starts_with("impedance_")) continue;
        const std::string own = promise.figure + (promise.port.empty() ? "" : "." + promise.port);
        const std::string name = own + (promise.hookUp.empty() ? "" : "@" + promise.hookUp);
        const auto at = state.figures.find(name);
        if (at == state.figures.end()) continue;
        const Promised promised = transferred(context, state, own, promise.hookUp, list.measured);
        const std::string digits = own.substr(10, own.find('.') - 10);
        const double f = units::read(units::Kind::Frequency, digits);
        auto& row = list.add(TestOrder::Signal,
                             joined({"Impedance of ", own.substr(own.find('.') + 1), ", ",
                                     units::writeExact(units::Kind::Frequency, f)}),
                             name);
        row.hookUp = joined({"Impedance meter in place of what hangs on that port; the rest: ",
                             state.bench.hookUp(promise.hookUp).words});
        row.settings =
            joined({units::writeExact(units::Kind::Frequency, f), ", magnitude; weak signal as for the inductance"});
        row.method = "Everything else connected.";
        const Expected& e = at->second;
        RowList::limit(
            row,
            window(e, context.fixture.doubts.impedance.at(e.value), promised, Sides::Both, units::Kind::Resistance),
            units::Kind::Resistance, e.value);
    }
}

}  // namespace

void addImpedanceRows(const PlanContext& context, const BenchState& state, RowList& list) {
    addInductance(context, state, list);
    addLeakage(context, state, list);
    addCapacitance(context, state, list);
    addResonance(context, state, list);
    addPortImpedance(context, state, list);
}

}  // namespace shop
