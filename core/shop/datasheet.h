// SPDX-License-Identifier: GPL-3.0-or-later
// What a datasheet for a customer says. It never says how the unit is wound: no turns, wire, alloy, sheet or order.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "analysis/answer.h"
#include "catalog/catalog.h"
#include "design/design.h"
#include "shop/paper_head.h"

namespace shop {

/// One terminal: where it is and what it does.
struct PinoutRow {
    std::string terminal;
    std::string where;     ///< "pin 3", "red lead, 150 mm"
    std::string function;  ///< "primary start"
    bool dot = false;      ///< in phase with the other dots
    bool operator==(const PinoutRow&) const = default;
};

/// A pin seen from below, m from the bobbin's middle.
struct PinSpot {
    int number = 0;
    double x = 0, y = 0;
    bool used = false;
    bool operator==(const PinSpot&) const = default;
};

/// Sizes over all, m: x across the legs, y along the tongue, z square to the board. Geometry of the core assembled
/// flat on the board, coil flanges as deep as the window, with frame, can or cup round them.
struct Outline {
    double width = 0, length = 0, height = 0;  ///< over all in x, y, z
    double coreWidth = 0, coreLength = 0, coreHeight = 0;
    double coilWidth = 0, coilLength = 0, coilHeight = 0;
    std::vector<PinSpot> pins;
    double pitch = 0;        ///< m; 0: no pins
    double rowDistance = 0;  ///< between the outermost rows, m
    bool operator==(const Outline&) const = default;
};

/// A tap on a drawn winding; `share` of the way from start to finish.
struct SchematicTap {
    std::string terminal;
    double share = 0;
    bool operator==(const SchematicTap&) const = default;
};

/// One drawn winding between two terminals.
struct SchematicWinding {
    std::string title;  ///< "primary 1"
    std::string port;   ///< the port that it serves first
    bool driven = false;
    std::string start, finish;
    bool dotAtStart = true;
    std::vector<SchematicTap> taps;
    bool operator==(const SchematicWinding&) const = default;
};

struct SchematicShield {
    std::string name;
    std::string terminal;  ///< where it comes out; its name if it has none
    bool operator==(const SchematicShield&) const = default;
};

/// The circuit inside the unit, and which of its points the hook-up earths.
struct Schematic {
    std::vector<SchematicWinding> windings;
    std::vector<SchematicShield> shields;
    bool coreReachable = false;        ///< the hook-up names the core
    std::vector<std::string> earthed;  ///< terminals, shields, "core"
    bool operator==(const Schematic&) const = default;
};

/// One row of a table of values.
struct ValueRow {
    std::string what, condition, value;
    bool doubtful = false;  ///< predicted outside the range in which the method holds
    bool operator==(const ValueRow&) const = default;
};

/// A line of a chart.
struct ChartLine {
    std::string label;
    bool right = false;  ///< on the right axis
    std::vector<double> y;
    bool operator==(const ChartLine&) const = default;
};
struct ChartAxis {
    std::string label, unit;  ///< `unit` for people; "" on the right: no axis there
    bool logarithmic = false;
    bool prefixed = false;  ///< numbers with k and M
    bool operator==(const ChartAxis&) const = default;
};
struct Chart {
    std::string title;
    std::vector<double> frequency;
    ChartAxis left, right;
    /// Set where the right axis only counts the left one's lines from another zero: right = left − offset.
    std::optional<double> rightOffset;
    std::vector<ChartLine> lines;
    double validFrom = 0, validTo = 0;
    bool valid = true;
    std::vector<design::MaskPoint> mask;  ///< on the left axis
    bool operator==(const Chart&) const = default;
};

struct Datasheet {
    std::string title, partNumber, revision, date;
    std::string use;
    std::string digest;  ///< short, of the design
    Manner manner = {};
    std::vector<PinoutRow> pinout;
    Outline outline;
    Schematic schematic;
    std::string conditions;  ///< of the values, in words
    std::vector<ValueRow> agreed;
    std::vector<ValueRow> typical;
    std::vector<Chart> charts;
    std::vector<std::pair<std::string, std::vector<std::string>>> notes;  ///< heading and paragraphs
    bool operator==(const Datasheet&) const = default;
};

/// The datasheet of a checked design and its answer, for the hook-up that the answer shows.
[[nodiscard]] Datasheet datasheet(const design::Design& design, const analysis::Answer& answer,
                                  const catalog::Catalog& shop, const Issue& issue);

}  // namespace shop
