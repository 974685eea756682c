// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet's loop led along a wave.
#pragma once

#include <map>

#include "analysis/one_cycle.h"
#include "magnetics/sheet_loop.h"

namespace analysis {

/// Where a loop is before it is led: its memory and field.
struct LoopStart {
    const magnetics::SheetLoop& loop;
    const magnetics::PlayMemory& memory;
    double field;   ///< A/m
    double weight;  ///< c of the wave  B + c H,  T per A/m
};

/// Leads a loop along a wave, T, once round in the steady state.
[[nodiscard]] Followed followedLoop(const LoopStart& start, const std::vector<double>& wave, bool even);

/// What the field owes, besides the wave now, to the wave at the turning points that the loop remembers, A/m per T, by
/// their sample:
///
///     dH_n = dw_n / (c + slope_n) + sum_m byTurns[m]_n dw_m
///
/// Exact but where a turning point passes from one sample to the next.
using ByTurns = std::map<std::size_t, std::vector<double>>;
[[nodiscard]] ByTurns slopesByTurns(const LoopStart& start, const std::vector<double>& wave, bool even);

}  // namespace analysis
