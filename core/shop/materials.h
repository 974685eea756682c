// SPDX-License-Identifier: GPL-3.0-or-later
// What one unit is made of, counted, measured and weighed. Inside papers only.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "coil/coil_build.h"
#include "design/design.h"

namespace shop {

/// The round wire of one winding, or of a shield that is an open winding.
struct WireUse {
    std::string winding, key, title;
    double bare = 0, overall = 0, overallMaximum = 0;  ///< m
    int strands = 1;
    double turns = 0;   ///< wound, all sections, one strand
    double length = 0;  ///< in the coil and to its pins, all strands, m
    double bought = 0;  ///< the same with what is lost, m
    double mass = 0;    ///< of `bought` with its enamel, kg
    bool operator==(const WireUse&) const = default;
};

/// Copper foil: a shield, or the conductor of a winding.
struct FoilUse {
    std::string name;
    bool shield = true;
    double thickness = 0, width = 0, length = 0;  ///< m
    double mass = 0;                              ///< kg, with waste
    bool operator==(const FoilUse&) const = default;
};

/// Film, tape or paper of one stock thickness.
struct FilmUse {
    std::string key, title;
    double thickness = 0;  ///< m
    int turns = 0;         ///< wraps in all
    double area = 0;       ///< m2, without waste
    double bought = 0;     ///< m2, with waste
    double mass = 0;       ///< kg of `bought`; 0: density not known
    bool operator==(const FilmUse&) const = default;
};

/// The sheets of one alloy.
struct SheetUse {
    std::string key, title;  ///< of the alloy: its composition
    bool brittle = false;    ///< loses permeability by blows and bending: nickel and cobalt alloys
    double thickness = 0;    ///< m
    int count = 0;           ///< whole sheets: an E with its I, a U with its I
    double height = 0;       ///< its part of the closed stack, m
    double mass = 0;         ///< kg, without waste; 0: density not known
    bool operator==(const SheetUse&) const = default;
};

struct LeadUse {
    std::string terminal, colour;
    double length = 0, cut = 0;  ///< outside the unit; to be cut, m
    bool operator==(const LeadUse&) const = default;
};

struct CompoundUse {
    std::string key, title;
    bool varnish = false;
    double volume = 0;  ///< m3: the room in the windows that nothing else takes, along the mean turn
    double mass = 0;    ///< kg; 0: density not known
    bool operator==(const CompoundUse&) const = default;
};

/// Fittings of one kind.
struct PieceUse {
    std::string key, title;
    std::string form;        ///< "frame"
    bool insulated = false;  ///< to be fitted with a bush, washer or gap that breaks its loop
    bool conducts = false;
    int count = 0;
    double mass = 0;  ///< of all, kg; 0: not known
    bool operator==(const PieceUse&) const = default;
};

/// What is cut off a reel; key and title empty where the design names none.
struct ReelUse {
    std::string key, title;
    double length = 0;  ///< m
    double mass = 0;    ///< kg; 0: not known
    bool operator==(const ReelUse&) const = default;
};

struct Materials {
    std::string bobbinKey, bobbinTitle, sheetKey, sheetTitle;
    int bobbins = 1;
    std::vector<WireUse> wires;
    std::vector<FoilUse> foils;
    std::vector<FilmUse> films;
    std::vector<SheetUse> sheets;
    std::vector<LeadUse> leads;
    std::vector<CompoundUse> compounds;
    std::vector<PieceUse> pieces;
    ReelUse lead;  ///< of all `leads`
    ReelUse sleeving;
    ReelUse tape;       ///< none unless the design names one
    int joints = 0;     ///< soldered
    double solder = 0;  ///< kg
    bool operator==(const Materials&) const = default;
};

/// A ply made of stock: how many turns of which thicknesses, at most two of them. The fewest turns that come within
/// 10 % of what is asked (what film and tape vary by: common practice, no source), the thicker of two alike; where none
/// do, the nearest. Without stock thicknesses one turn of what is asked.
struct StockTurns {
    double thickness = 0;  ///< m
    int turns = 0;
};
[[nodiscard]] std::vector<StockTurns> stockTurns(double thickness, const std::vector<double>& stock);
[[nodiscard]] std::vector<StockTurns> stockTurns(const design::Design& design, const design::Ply& ply,
                                                 const catalog::Catalog& shop);

/// Number of whole sheets of one alloy: n = height factor share / thickness, rounded. Geometry.
[[nodiscard]] int sheetCount(const design::Core& core, const design::StackPart& part);
/// Area of one sheet, m2: outline less windows.
[[nodiscard]] double sheetArea(const catalog::Sheet& sheet);
/// Length of one wrap at `x` from the tongue, without overlap, m.
[[nodiscard]] double wrapLength(const coil::CoilBuild& build, double x);

/// Everything in one unit of a checked design laid out.
[[nodiscard]] Materials materialsOf(const design::Design& design, const coil::CoilBuild& build,
                                    const catalog::Catalog& shop);

}  // namespace shop
