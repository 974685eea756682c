// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/trials.h"

#include <algorithm>

#include "analysis/in_threads.h"
#include "seek/least.h"

namespace seek {

Trials::Trials(const Bench& bench, const Plan& plan, std::vector<CoreChoice> cores, std::vector<Order> orders,
               const std::stop_token& stop, const Progress& progress)
    : bench_(bench),
      plan_(plan),
      cores_(std::move(cores)),
      orders_(std::move(orders)),
      stop_(stop),
      progress_(progress) {}

/// The first draft that can be wound tells the judge of ports and windings.
void Trials::needJudge(const std::vector<Draft>& drafts) {
    for (const auto& d : drafts) {
        if (judge_ || stop_.stop_requested()) return;
        if (const auto design = drawn(bench_, cores_[d.core], orders_[d.order], d.sizes))
            judge_.emplace(*design, bench_.shop);
    }
}

Trial Trials::trialOf(const Draft& draft) {
    if (plan_.enough.stop_requested()) return {draft, nullptr, {}, {}};
    Trial trial{draft, drawn(bench_, cores_[draft.core], orders_[draft.order], draft.sizes), {}, {}};
    if (!trial.design || !judge_) return trial;
    trial.verdict = judge_->verdict(*trial.design, stop_);
    trial.burden = burdenOf(*trial.design, bench_.shop, plan_.prices);
    const std::size_t done = ++computed_;
    if (progress_) {
        const std::lock_guard guard(telling_);
        progress_(done);
    }
    return trial;
}

std::vector<Trial> Trials::tried(const std::vector<Draft>& drafts) {
    needJudge(drafts);
    std::vector<Trial> trials(drafts.size());
    analysis::inThreads(drafts.size(), plan_.threads, stop_,
                        [&] { return [&](std::size_t k) { trials[k] = trialOf(drafts[k]); }; });
    if (stop_.stop_requested()) return {};
    all_.insert(all_.end(), trials.begin(), trials.end());
    return trials;
}

/// Cost is made least while every promise keeps its margin. Both are counted against the start's cost and in thins.
std::vector<Trial> Trials::refined(const Trial& start) {
    const auto& columns = judge_->columns();
    const auto& core = cores_[start.draft.core];
    const Sizes& s = start.draft.sizes;
    constexpr double far = 2;  // thins: what is further off counts no more, lest it drown the rest
    std::vector<Trial> way;
    Problem problem;
    problem.start = {s.turns, s.drivenShare, s.fill, s.barrier, s.interlayer};
    problem.low = {std::max(1.0, std::min(0.6 * s.turns, core.leastTurns)), 0.15, 0.25, 50e-6, 12e-6};
    problem.high = {1.8 * s.turns + 1, 0.85, 0.95, 0.4e-3, 0.1e-3};
    for (std::size_t k = 0; k < problem.start.size(); ++k)
        problem.start[k] = std::clamp(problem.start[k], problem.low[k], problem.high[k]);
    problem.step = 0.15;
    problem.tolerance = 0.01;
    problem.evaluations = plan_.refinements;
    problem.constraints = start.verdict.margins.size();
    problem.value = [&](const std::vector<double>& at, std::vector<double>& broken) {
        Draft draft = start.draft;
        draft.sizes = {at[0], at[1], at[2], at[3], at[4]};
        way.push_back(trialOf(draft));
        const Trial& now = way.back();
        std::fill(broken.begin(), broken.end(), far);
        if (!now.design || now.verdict.margins.size() != broken.size()) return far;
        for (std::size_t k = 0; k < broken.size(); ++k) {
            const double wanted = columns[k].mask ? plan_.leastOfMask : plan_.least;
            broken[k] = std::clamp(wanted - now.verdict.margins[k], -far, far);
        }
        return now.burden.cost / start.burden.cost;
    };
    (void)least(problem, stop_);  // what it computes is kept on the way
    return way;
}

void Trials::refine(const std::vector<Trial>& starts) {
    std::vector<std::vector<Trial>> ways(starts.size());
    analysis::inThreads(starts.size(), plan_.threads, stop_,
                        [&] { return [&](std::size_t k) { ways[k] = refined(starts[k]); }; });
    if (stop_.stop_requested()) return;
    for (auto& way : ways) all_.insert(all_.end(), way.begin(), way.end());
}

}  // namespace seek
