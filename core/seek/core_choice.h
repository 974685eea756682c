// SPDX-License-Identifier: GPL-3.0-or-later
// Cores that a brief allows, by closed forms.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"
#include "seek/need.h"
#include "seek/stock.h"

namespace magnetics {
struct CoreModel;
}

namespace seek {

/// A core with its bobbin, and between which turns it is worth trying.
struct CoreChoice {
    design::Core core;
    std::string bobbin;
    double leastTurns = 1;  ///< of the winding with the fewest: the low end and the level ask for them
    double mostTurns = 1;   ///< more cannot keep resistance and loss in this window
    double estimate = 0;    ///< cost of sheets and copper, or their mass in kg, if the window were full
};

/// What the first hook-up means at the winding with the fewest turns, in ohm and volt there.
struct Terminations {
    double source = 0;       ///< resistance of the source
    double load = 0;         ///< conductance of every load together, S
    double drivenTurns = 1;  ///< of the driven port, and of the observed one, over the fewest
    double observedTurns = 1;
};
[[nodiscard]] Terminations terminationsOf(const Need& need);

/// Fewest turns N of one winding at which the level at `frequency` re 1 kHz is at least `share`:
///     H(f) = Z / (Z + R),  Z = j w N^2 Lambda(f),  R source and loads in parallel
/// (the main inductance against all resistances, R. Lee, Electronic Transformers and Circuits; Lambda the complex
/// inductance of a turn). Resistance of wire is left out, so that no core is refused which could do. Up to 1e5.
[[nodiscard]] double turnsForLevel(const magnetics::CoreModel& core, const Terminations& at, double frequency,
                                   double share);

/// Fewest turns of the winding with the fewest at which a core keeps what promises and masks of the first hook-up ask
/// of low end (`turnsForLevel`) and level (Faraday at the core's knee).
[[nodiscard]] double leastTurns(const Need& need, const Terminations& at, const magnetics::CoreModel& core);

/// Every core of the stock that could keep the brief, cheapest first: each single-chamber bobbin with its sheet and
/// stack, each alloy at each stock thickness, and halves of two alloys whose permeabilities differ tenfold. Refused:
/// larger than the brief allows (length and width may be exchanged), fewer pins than terminals ask for, more turns
/// wanted than copper in half of its window lets through; dearer and with no fewer turns than another of the same
/// bobbin, and all but four of a bobbin. Joint gap 3, 4, 6 um and stacking factor 0.86, 0.90, 0.92 at 0.1, 0.2, 0.35 mm
/// sheet, straight lines between (common practice, no source).
[[nodiscard]] std::vector<CoreChoice> coreChoices(const Need& need, const Stock& stock, const catalog::Catalog& shop,
                                                  const shop::Prices* prices);

/// Throws units::BadInput: nothing in the catalog could keep the brief.
[[noreturn]] void refuseForWantOfACore();

}  // namespace seek
