// SPDX-License-Identifier: GPL-3.0-or-later
// How far something varies in a shop: distribution, width, what a lot has in common.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace catalog {

/// The law that a value follows. `Discrete`: steps with their chances.
enum class Law { Normal, Uniform, Lognormal, Triangular, Discrete };
constexpr std::array<std::pair<const char*, Law>, 5> names(Law) {
    return {{{"normal", Law::Normal},
             {"uniform", Law::Uniform},
             {"lognormal", Law::Lognormal},
             {"triangular", Law::Triangular},
             {"discrete", Law::Discrete}}};
}

/// How far a number can be relied on.
enum class Status { Seen, CommonPractice, FromMemory };
constexpr std::array<std::pair<const char*, Status>, 3> names(Status) {
    return {{{"seen", Status::Seen},
             {"common practice, no source", Status::CommonPractice},
             {"from memory", Status::FromMemory}}};
}

/// A half width that holds up to a nominal size, in files [up to, plus or minus], both in the quantity's unit.
struct WidthUpTo {
    double upTo = 0;
    double plusMinus = 0;
    bool operator==(const WidthUpTo&) const = default;
    void readSelf(const json::Value& from, const std::string& key, json::Reader& reader);
    [[nodiscard]] json::Value writeSelf() const { return json::Value::array({upTo, plusMinus}); }
};

/// A step away from the nominal and the share of units that take it, in files [step, share].
struct StepChance {
    double step = 0;
    double share = 0;
    bool operator==(const StepChance&) const = default;
    void readSelf(const json::Value& from, const std::string& key, json::Reader& reader);
    [[nodiscard]] json::Value writeSelf() const { return json::Value::array({step, share}); }
};

/// How far one kind of thing varies. Half widths: normal, two standard deviations; lognormal, two standard deviations
/// of the logarithm lie at the factor 1 + `plusMinus`; uniform and triangular, the ends.
struct ShopTolerance {
    std::string title;
    Law law = Law::Normal;
    double plusMinus = 0;           ///< half width, relative or in the quantity's own unit
    bool relative = true;           ///< `plusMinus` is a share of the value
    std::vector<WidthUpTo> widths;  ///< by nominal size, rising, in the quantity's unit; beyond the last: `plusMinus`
    std::vector<StepChance> steps;  ///< Discrete alone; what is left to 1 stays at the nominal
    double lotShare = 0;            ///< of the variance: common to all units of a lot (of wire, paper, sheet)
    std::string source;             ///< a key into the file's list of sources, or the source itself
    Status status = Status::CommonPractice;
    std::string note;
    json::Value extra;
    bool operator==(const ShopTolerance&) const = default;
};

template <class Visitor>
void fields(Visitor& visit, ShopTolerance& t) {
    visit.may("title", t.title);
    visit.may("distribution", t.law);
    visit.may("plus_minus", t.plusMinus, json::within(0, 1e6));
    visit.may("relative", t.relative);
    visit.may("widths", t.widths);
    visit.may("steps", t.steps);
    visit.may("lot_share", t.lotShare, json::within(0, 1));
    visit.need("width_source", t.source);
    visit.need("status", t.status);
    visit.may("note", t.note);
}

/// A shop's tolerances by one of `toleranceKeys`.
using Tolerances = std::map<std::string, ShopTolerance>;
/// Reads files named tolerances.json as `load` reads the catalog's: a later file's entry rules over one of the same
/// key. Throws BadInput with all faults of all files.
[[nodiscard]] Tolerances loadTolerances(const std::vector<CatalogFile>& files);

/// What a shop's tolerances are known for, in the order they are shown: the keys of tolerances.json.
inline constexpr std::array<const char*, 15> toleranceKeys{
    "wire_diameter",  "wire_enamel",      "wire_stretch",   "permittivity",     "sheet_thickness",
    "tightness",      "stack_height",     "stacking",       "permeability",     "joint_gap",
    "turns_mistakes", "source_impedance", "load_impedance", "load_capacitance", "temperature"};

}  // namespace catalog
