// SPDX-License-Identifier: GPL-3.0-or-later
// What the winder follows, step by step from the bare bobbin. An inside paper: it carries the recipe. It must do alone:
// without this program, without a catalog.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "shop/finishing.h"
#include "shop/materials.h"
#include "shop/paper_head.h"

namespace shop {

/// A layer as the winder counts it.
struct LayerRow {
    int number = 1;
    double turns = 0;
    double counter = 0;   ///< reading at its end, from 0 at the step's first turn
    bool fromLow = true;  ///< begins at the low flange
    bool operator==(const LayerRow&) const = default;
};

/// Something to do, and the counter's reading at which it is due.
struct Action {
    std::optional<double> counter;
    std::string words;
    bool layers = false;  ///< the table of layers belongs here
    bool operator==(const Action&) const = default;
};

/// A resistance to measure before anything else is wound, at 20 degrees Celsius, without leads.
struct ResistanceCheck {
    std::string between;
    double expected = 0, low = 0, high = 0;  ///< ohm
    bool operator==(const ResistanceCheck&) const = default;
};

enum class StepKind { Wire, Paper, Shield };

struct WindingStep {
    std::string number;  ///< "1.3": as in the winding program
    StepKind kind = StepKind::Wire;
    std::string title;
    int leg = 1, chamber = 1;
    double turns = 0;
    std::vector<LayerRow> layers;
    std::vector<Fact> facts;
    std::vector<Action> actions;
    std::vector<ResistanceCheck> checks;
    bool operator==(const WindingStep&) const = default;
};

/// A part of the cut, and the step (index in `steps`) that lays it; -1: the bobbin.
enum class CutPart { Bobbin, Wire, Paper, Shield };
struct CutShape {
    int step = -1;
    CutPart part = CutPart::Bobbin;
    int leg = 1;
    int winding = 0;                        ///< its place in the design, for its hue
    double x0 = 0, x1 = 0, y0 = 0, y1 = 0;  ///< m
    std::optional<bool> startAtLow;         ///< first layer of a section: where its first turn lies
    std::optional<bool> finishAtLow;        ///< last layer: where its last turn lies
    bool operator==(const CutShape&) const = default;
};

/// A bobbin's pin seen from below.
struct BobbinPin {
    int number = 1;
    double x = 0, y = 0;  ///< m from the middle
    bool used = false;
    bool operator==(const BobbinPin&) const = default;
};

struct WindingSheet {
    PaperHead head;
    std::vector<Fact> setUp;  ///< bobbin, flanges, sense, counter
    std::vector<BobbinPin> pins;
    double bobbinWidth = 0, bobbinLength = 0;  ///< m: across the pins' rows and along the tongue
    Materials materials;
    std::vector<Fact> rules;                   ///< how ends, counts and tension are handled
    double windowWidth = 0, windowHeight = 0;  ///< m, of the cut; two legs: half a window for each
    int legs = 1;
    std::vector<WindingStep> steps;
    std::vector<CutShape> shapes;
    Finishing finishing;
    bool operator==(const WindingSheet&) const = default;
};

/// The sheet of a checked design.
[[nodiscard]] WindingSheet windingSheet(const design::Design& design, const catalog::Catalog& shop, const Issue& issue);

/// Limits of a wire's resistance, as shares of the expected one. Conductor: tolerance of its diameter as printed in a
/// copied winding-wire table (read; intermediate sizes take the next larger size's), below 0.071 mm 10 % of the
/// resistance (a strand table's least and greatest values, read). Mean turn: 3 % less to 5 % more, since a coil bulges
/// (common practice, no source).
struct Limits {
    double low = 1, high = 1;
};
[[nodiscard]] Limits resistanceLimits(double bareDiameter, bool foil);

}  // namespace shop
