// SPDX-License-Identifier: GPL-3.0-or-later
// Drafts that were computed. For the room's own sources.
#pragma once

#include <atomic>
#include <map>
#include <mutex>
#include <optional>
#include <set>

#include "seek/draft.h"
#include "seek/search.h"

namespace seek {

/// A draft by the places of its choices.
struct Draft {
    std::size_t core = 0, order = 0;
    Sizes sizes;
};

/// A draft computed.
struct Trial {
    Draft draft;
    design::DesignPtr design;  ///< null: it cannot be wound
    Verdict verdict;
    Burden burden;
    [[nodiscard]] bool keepsAll() const { return design && verdict.weakest() >= 0; }
};

/// Computes drafts and keeps them all.
class Trials {
public:
    Trials(const Bench& bench, const Plan& plan, std::vector<CoreChoice> cores, std::vector<Order> orders,
           const std::stop_token& stop, const Progress& progress);
    /// Draws and computes; the trials are those of the drafts, in their order, and are kept.
    std::vector<Trial> tried(const std::vector<Draft>& drafts);
    /// Refines the sizes of each; what was computed on the way is kept.
    void refine(const std::vector<Trial>& starts);

    [[nodiscard]] const std::vector<CoreChoice>& cores() const { return cores_; }
    [[nodiscard]] const std::vector<Order>& orders() const { return orders_; }
    [[nodiscard]] const std::vector<Trial>& all() const { return all_; }
    [[nodiscard]] std::size_t count() const { return computed_; }

private:
    [[nodiscard]] Trial trialOf(const Draft& draft);
    void needJudge(const std::vector<Draft>& drafts);
    [[nodiscard]] std::vector<Trial> refined(const Trial& start);

    const Bench& bench_;
    const Plan& plan_;
    std::vector<CoreChoice> cores_;
    std::vector<Order> orders_;
    const std::stop_token& stop_;
    const Progress& progress_;
    std::optional<Judge> judge_;
    std::vector<Trial> all_;
    std::mutex telling_;
    std::atomic<std::size_t> computed_ = 0;
};

}  // namespace seek
