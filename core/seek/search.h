// SPDX-License-Identifier: GPL-3.0-or-later
// From a brief to a short list of designs that keep it.
#pragma once

#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "analysis/answer.h"
#include "seek/held.h"
#include "seek/judge.h"
#include "seek/need.h"

namespace seek {

/// How a search goes about it. The numbers count trials, not time, so that the same question has the same answer.
struct Plan {
    std::size_t keep = 6;  ///< candidates at most
    Held held;
    const shop::Prices* prices = nullptr;  ///< null: copper and sheets by mass stand in for cost
    std::size_t cores = 24;                ///< that are tried in one order
    std::size_t coresInOrders = 5;         ///< of them, that are tried in the best orders
    std::size_t ordersTried = 16;          ///< on one core, those of the fewest sections first
    std::size_t orders = 3;
    std::size_t starts = 5;  ///< whose sizes are refined
    int refinements = 20;    ///< trials each
    std::stop_token enough;  ///< asked for: no more is tried, and the list is made of what there is
    unsigned threads = 0;    ///< 0: as the machine has; the result is the same for any number
    double least = 0.2;  ///< margin that refined designs keep on promises, in those where a promise stops being thin
    double leastOfMask = 0.05;  ///< on masks: 0.025 dB
};

/// One design on the list.
struct Candidate {
    design::DesignPtr design;
    analysis::AnswerPtr answer;  ///< in full
    std::vector<analysis::PromiseState> promises;
    double weakest = 0;  ///< least margin of all promises, as `Verdict`
    std::string weakestPromise;
    Burden burden;
    std::string order;                 ///< "P | foil | S | P"
    double distortion = 0;             ///< THD at 20 Hz and the operating level, share; not a number: not to be had
    std::vector<std::string> givesUp;  ///< against the best of the list in each aim, in words
};

struct ShortList {
    std::vector<Candidate> candidates;  ///< those with the strongest weakest promise first
    bool kept = false;                  ///< every candidate keeps every promise; else the nearest are shown
    std::size_t cores = 0, orders = 0;  ///< that closed forms left over
    std::size_t tried = 0;              ///< designs computed
    bool stopped = false;               ///< then the list holds what was found before
};

/// Called from any thread, one at a time.
using Progress = std::function<void(std::size_t tried)>;

/// Seeks. Cores, orders and turns are enumerated with closed forms to prune them, all that is left is judged by its
/// true figures, the sizes of the best are refined by `least`, and of all that was computed the list takes the
/// cheapest, the smallest and the strongest, then others that nothing beats in every aim. Throws units::BadInput if
/// closed forms leave nothing.
[[nodiscard]] ShortList sought(const Need& need, const catalog::Catalog& shop, const Plan& plan,
                               const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace seek
