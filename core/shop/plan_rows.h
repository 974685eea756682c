// SPDX-License-Identifier: GPL-3.0-or-later
// The rows that a test plan is made of. For the room's own sources.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "shop/datasheet_parts.h"
#include "shop/test_plan.h"

namespace shop {

/// What every row is made from.
struct PlanContext {
    const design::Design& design;
    const analysis::Answer& answer;  ///< in the customer's hook-up
    const PlanPrediction& prediction;
    const catalog::Catalog& shop;
    const design::Fixture& fixture;
    std::map<std::string, WindingRole> roles;
    Lengths in;

    /// "primary (P)".
    [[nodiscard]] std::string winding(const std::string& name) const;
    /// The same, "shield SH" or "core".
    [[nodiscard]] std::string electrode(const std::string& name) const;
    /// "start pin 1, finish pin 2".
    [[nodiscard]] std::string ends(const design::Winding& winding) const;
    /// "1 to 2".
    [[nodiscard]] std::string terminals(const design::Winding& winding) const;
    /// What was promised of a figure of the design itself, which no hook-up changes.
    [[nodiscard]] Promised promised(const std::string& figure) const;
    /// The winding with the most turns.
    [[nodiscard]] const design::Winding& longest() const;
};

/// A stage's rows in the making.
struct RowList {
    std::vector<PlanRow> rows;
    std::set<std::size_t>& measured;  ///< of the brief's promises
    PlanRow& add(TestOrder order, const std::string& what, const std::string& name);
    /// Takes limits over.
    static void limit(PlanRow& row, const Window& window, units::Kind kind, std::optional<double> expected);
};

void addPolarityRows(const PlanContext& context, const BenchState* state, RowList& list);
/// Continuity with the open winding first, resistance, insulation; `last`: the stage that ends with high voltage.
void addDirectRows(const PlanContext& context, const BenchState& state, bool last, RowList& list);
void addHipotRows(const PlanContext& context, const BenchState& state, RowList& list);
void addDemagnetiseRow(const PlanContext& context, const BenchState& state, RowList& list);
/// Inductance, leakage, capacitance, resonance.
void addImpedanceRows(const PlanContext& context, const BenchState& state, RowList& list);
/// Gain and response, peak.
void addResponseRows(const PlanContext& context, const BenchState& state, RowList& list);
void addDistortionRows(const PlanContext& context, const BenchState& state, RowList& list);
/// Rejection, balance of the output, noise.
void addBalanceRows(const PlanContext& context, const BenchState& state, RowList& list);

/// A promise on a figure of a hook-up in the fixture's terms: moved by what the prediction differs between the
/// customer's hook-up and the bench (dB by difference, everything else by ratio), and drawn in by the figure's model
/// doubt of that difference. Marks it as measured.
[[nodiscard]] Promised transferred(const PlanContext& context, const BenchState& state, const std::string& figure,
                                   const std::string& hookUp, std::set<std::size_t>& measured);
/// The mask's limits on the response at f, moved likewise.
[[nodiscard]] Promised maskAt(const PlanContext& context, const AtFrequency& bench);

/// Marks the promised ends of the band that a point of the response proves.
void noteProvedEdges(const PlanContext& context, std::set<std::size_t>& measured);

/// Frequencies at which the response is measured: the audio band's ends, the mask's corners and promised band edges.
[[nodiscard]] std::vector<double> responsePoints(const design::Design& design, const design::Fixture& fixture);

}  // namespace shop
