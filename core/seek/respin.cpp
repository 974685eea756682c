// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/respin.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <optional>

#include "analysis/in_threads.h"
#include "coil/coil_build.h"
#include "design/check.h"
#include "design/difference.h"
#include "seek/judge.h"
#include "seek/respin_ways.h"
#include "units/fault.h"

namespace seek {

namespace {

/// A change computed.
struct Tried {
    const Way* way = nullptr;
    double amount = 0, size = 0;
    Sample sample;
    Verdict verdict;
};

bool fits(const design::Design& design, const catalog::Catalog& shop) {
    const auto build = coil::layOut(design, shop);
    return std::all_of(build.fill.begin(), build.fill.end(), [](const coil::ChamberFill& f) {
        return f.over <= 0 && f.problems.empty() && f.buildMaximum <= f.room.width();
    });
}

class Spinning {
public:
    Spinning(const Sample& sample, const catalog::Catalog& shop, const RespinPlan& plan, const std::stop_token& stop,
             const RespinProgress& progress)
        : sample_(sample),
          shop_(shop),
          plan_(plan),
          stop_(stop),
          progress_(progress),
          judge_(*sample.unit, shop),
          fitted_(fits(*sample.recipe, shop)) {}

    /// What each way comes to: the least amount that keeps every promise, or the nearest that it gets.
    std::vector<Tried> run(const std::vector<Way>& ways) {
        std::vector<std::optional<Tried>> best(ways.size());
        analysis::inThreads(ways.size(), plan_.threads, stop_,
                            [&] { return [&](std::size_t k) { best[k] = leastOf(ways[k]); }; });
        std::vector<Tried> all;
        for (auto& one : best)
            if (one) all.push_back(std::move(*one));
        return all;
    }
    [[nodiscard]] bool keeps(const Tried& tried) const { return tried.verdict.weakest() >= plan_.least; }
    [[nodiscard]] std::size_t count() const { return count_; }

private:
    std::optional<Tried> tried(const Way& way, double amount) {
        Spun spun{*sample_.recipe, *sample_.unit};
        const double size = way.apply(spun, amount);
        if (!(size > 0) || !design::check(spun.recipe, shop_, "").empty()) return {};
        if (fitted_ && !fits(spun.recipe, shop_)) return {};
        Tried now{&way, amount, size, {}, judge_.verdict(spun.unit, stop_)};
        now.sample = {std::make_shared<const design::Design>(std::move(spun.recipe)),
                      std::make_shared<const design::Design>(std::move(spun.unit))};
        const std::size_t done = ++count_;
        if (progress_) {
            const std::lock_guard guard(telling_);
            progress_(done);
        }
        return now;
    }
    /// From the smallest amount on, until it keeps or has led away twice.
    std::optional<Tried> leastOf(const Way& way) {
        std::optional<Tried> nearest;
        double failed = 0;
        int away = 0;
        for (const double amount : way.amounts) {
            if (stop_.stop_requested()) return {};
            auto now = tried(way, amount);
            if (!now) continue;
            if (keeps(*now)) return refined(way, failed, std::move(*now));
            failed = amount;
            const bool nearer = !nearest || now->verdict.broken() > nearest->verdict.broken();
            away = nearer ? 0 : away + 1;
            if (nearer) nearest = std::move(now);
            if (away >= 2) break;
        }
        return nearest;
    }
    /// Halves what lies between an amount that fails and one that keeps, down to a hundredth of it.
    std::optional<Tried> refined(const Way& way, double failed, Tried kept) {
        constexpr double fine = 0.01;
        while (way.between && kept.amount - failed > fine * kept.amount && !stop_.stop_requested()) {
            const double middle = (failed + kept.amount) / 2;
            auto now = tried(way, middle);
            if (now && keeps(*now))
                kept = std::move(*now);
            else
                failed = middle;
        }
        return kept;
    }

    const Sample& sample_;
    const catalog::Catalog& shop_;
    const RespinPlan& plan_;
    const std::stop_token& stop_;
    const RespinProgress& progress_;
    Judge judge_;
    bool fitted_;
    std::mutex telling_;
    std::atomic<std::size_t> count_ = 0;
};

/// `before`: the lines of what was wound.
Respin respinOf(const Tried& tried, const Sample& sample, const std::vector<shop::PaperLine>& before,
                const catalog::Catalog& shop, const shop::Prices* prices) {
    Respin r;
    r.change = tried.way->change;
    r.what = tried.way->what;
    r.size = tried.size;
    r.words = design::differences(*sample.recipe, *tried.sample.recipe);
    r.sample = tried.sample;
    r.lines = shop::alteredLines(before, shop::paperLines(*tried.sample.recipe, shop, prices));
    return r;
}

void answer(Respin& r, const catalog::Catalog& shop, const std::stop_token& stop) {
    r.promises = analysis::answer(*r.sample.unit, shop, {}, stop)->promises;
    r.weakest = anyMargin;
    for (const auto& p : r.promises) {
        if (marginOf(p) > r.weakest) continue;
        r.weakest = marginOf(p);
        r.weakestPromise = p.text;
    }
}

bool smaller(const Respin& a, const Respin& b) {
    return a.lines.size() != b.lines.size() ? a.lines.size() < b.lines.size() : a.size < b.size;
}

std::string itemWords(const design::Item& item) {
    if (const auto* section = item.section()) return "section " + section->label();
    return item.shield() != nullptr ? "shield " + item.shield()->name : "insulation";
}

}  // namespace

std::string_view word(Change change) noexcept {
    switch (change) {
        case Change::Paper:
            return "paper";
        case Change::Turns:
            return "turns";
        case Change::Order:
            return "order";
        case Change::Gap:
            return "gap";
        case Change::SheetShare:
            return "sheet share";
    }
    return "";
}

void refuseUnlike(const Sample& sample, const std::string& file) {
    const auto itemsOf = [](const design::Design& d) {
        std::vector<std::string> all;
        for (const auto& w : d.windings) all.push_back("winding " + w.name);
        for (const auto& s : d.core.stack) all.push_back("sheets of " + s.alloy.key);
        for (const auto& place : d.coil)
            for (const auto& item : place.order) all.push_back(itemWords(item));
        return all;
    };
    const auto recipe = itemsOf(*sample.recipe), unit = itemsOf(*sample.unit);
    if (sample.recipe->coil.size() == sample.unit->coil.size() && recipe == unit) return;
    const auto [a, b] = std::mismatch(recipe.begin(), recipe.end(), unit.begin(), unit.end());
    units::refuse(file, b == unit.end() ? std::string("nothing more") : *b,
                  a == recipe.end() ? std::string("nothing more, as in the design that was wound")
                                    : *a + ", as in the design that was wound");
}

RespinList respun(const Sample& sample, const catalog::Catalog& shop, const RespinPlan& plan,
                  const std::stop_token& stop, const RespinProgress& progress) {
    RespinList list;
    const auto now = analysis::answer(*sample.unit, shop, {}, stop);
    for (const auto& p : now->promises)
        if (p.standing == analysis::Standing::Broken) list.broken.push_back(p);
    list.stopped = stop.stop_requested();
    if (list.broken.empty() || list.stopped) return list;
    const auto ways = waysOf(*sample.recipe, shop);
    Spinning spinning(sample, shop, plan, stop, progress);
    auto all = spinning.run(ways);
    list.tried = spinning.count();
    list.stopped = stop.stop_requested();
    if (list.stopped || all.empty()) return list;
    const auto before = shop::paperLines(*sample.recipe, shop, plan.prices);
    std::vector<Respin> kept;
    for (const auto& t : all)
        if (spinning.keeps(t)) kept.push_back(respinOf(t, sample, before, shop, plan.prices));
    std::stable_sort(kept.begin(), kept.end(), smaller);
    for (auto& r : kept) {
        if (list.respins.size() >= plan.keep) break;
        answer(r, shop, stop);
        if (r.weakest >= 0) list.respins.push_back(std::move(r));
    }
    list.kept = !list.respins.empty();
    if (!list.kept) {
        const auto nearest = std::max_element(all.begin(), all.end(), [](const Tried& a, const Tried& b) {
            return a.verdict.broken() < b.verdict.broken();
        });
        list.respins.push_back(respinOf(*nearest, sample, before, shop, plan.prices));
        answer(list.respins.back(), shop, stop);
    }
    list.stopped = stop.stop_requested();
    return list;
}

}  // namespace seek
