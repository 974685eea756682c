// SPDX-License-Identifier: GPL-3.0-or-later
// What can have gone wrong in the making of a unit, as something that can be done to a good one.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "learn/probe.h"

namespace learn {

enum class FaultKind {
    None,
    ShortedTurn,
    SectionOrder,
    Reversed,
    SwappedLeads,
    MissingSheets,
    WideGap,
    OpenShield,
    WrongTurns,
    WrongWire
};
/// "shorted turn", "wrong section order", …; "no fault".
[[nodiscard]] std::string_view word(FaultKind kind) noexcept;

/// One fault at one place. Where it has a size, that goes through `sizes` in order, from what just matters to the
/// most that is looked for; elsewhere there is one.
struct Fault {
    FaultKind kind = FaultKind::None;
    std::string words;  ///< "a turn shorted in P.a"
    std::vector<double> sizes{0};
    std::function<std::string(double)> sizeWords;        ///< "3 turns"; null: it has no size
    std::function<void(Unit& unit, double size)> apply;  ///< to a unit whose design is a copy of its own; null: none
    [[nodiscard]] Unit at(const design::Design& unit, double size) const;
};

/// No fault first, then every fault that a unit of this design can have:
/// - shorted turns in a section, 1 to 20 of them in its middle: taps before and behind, joined;
/// - two sections of different windings, or of different turns, wound in each other's place;
/// - a section wound in the opposite sense; a winding's start and finish exchanged;
/// - sheets of one alloy missing, one to half of them, the bobbin as it was; a gap wider by 3 um to 0.5 mm;
/// - a shield whose lead is open;
/// - a section with turns too few or too many, 1 to a quarter of them;
/// - a winding of thinner or thicker wire of the catalog, by 4 % of its diameter to a factor 1.6: thinner at the pitch
///   of the winding sheet, thicker with as many turns a layer as fit.
/// Sections of foil have no shorted turns and no other wire.
[[nodiscard]] std::vector<Fault> faultsOf(const design::Design& design, const catalog::Catalog& shop);

}  // namespace learn
