// SPDX-License-Identifier: GPL-3.0-or-later
// A sample that breaks promises, and the smallest change of what is wound that brings them back.
#pragma once

#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "analysis/answer.h"
#include "design/design.h"
#include "shop/altered_lines.h"
#include "shop/prices.h"

namespace seek {

/// What was wound, and the same design with the sizes, factors and materials that the unit turned out to have. Both
/// have the same windings and the same items in the same places.
struct Sample {
    design::DesignPtr recipe, unit;
};
/// Throws units::BadInput, place `file`, where the two are not alike enough to be changed alike.
void refuseUnlike(const Sample& sample, const std::string& file);

/// What a re-spin changes, one thing alone.
enum class Change { Paper, Turns, Order, Gap, SheetShare };
/// "paper", "turns", "order", "gap", "sheet share".
[[nodiscard]] std::string_view word(Change change) noexcept;

struct Respin {
    Change change = Change::Paper;
    std::string what;                ///< "turns of P", "insulation 3", "half of S.a beyond P.a"
    double size = 0;                 ///< share by which it changes what it changes; of the order: items moved
    std::vector<std::string> words;  ///< each difference: "P.a turns: 120 → 130"
    Sample sample;                   ///< to be wound now, and what it will be if it deviates as the sample did
    std::vector<analysis::PromiseState> promises;  ///< of the unit
    double weakest = 0;                            ///< least margin of the unit, as `Verdict`
    std::string weakestPromise;
    std::vector<shop::AlteredLine> lines;  ///< of winding sheet and bill
};

struct RespinPlan {
    std::size_t keep = 6;                  ///< re-spins at most
    const shop::Prices* prices = nullptr;  ///< for the bill; null: without costs
    double least =
        0.02;  ///< margin that the unit keeps, in those where a promise stops being thin: lest it hang by a hair
    unsigned threads = 0;
};

struct RespinList {
    std::vector<analysis::PromiseState> broken;  ///< by the sample
    std::vector<Respin> respins;                 ///< smallest first
    bool kept = false;      ///< each brings every promise back; else the one change that comes nearest is shown
    std::size_t tried = 0;  ///< changes computed
    bool stopped = false;
};

/// Called from any thread, one at a time, with the number of changes computed.
using RespinProgress = std::function<void(std::size_t tried)>;

/// Tries one change at a time, each from its smallest step on until the unit keeps every promise and the coil still
/// fits: turns of windings that belong together, or of all; each insulation and all of it, by stock thicknesses; paper
/// between layers; neighbours exchanged, or half of a section on the other side of its neighbour; the gap of a butt
/// joint; whole sheets from one alloy to another. The unit deviates from what is changed as the sample does from what
/// was wound: by the same share, or by the same number of turns. Smallest is what alters the fewest lines of winding
/// sheet and bill; of those alike what changes least. Where the sample breaks nothing there is nothing to change.
[[nodiscard]] RespinList respun(const Sample& sample, const catalog::Catalog& shop, const RespinPlan& plan,
                                const std::stop_token& stop = {}, const RespinProgress& progress = {});

}  // namespace seek
