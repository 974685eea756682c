// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/search.h"

#include <algorithm>
#include <cmath>

#include "design/edit.h"
#include "seek/short_list.h"
#include "seek/trials.h"
#include "units/fault.h"

namespace seek {

namespace {

/// Broken least first, then cheapest.
bool nearer(const Trial& a, const Trial& b) {
    const double one = a.design ? a.verdict.broken() : 10 * noMargin * anyMargin;
    const double other = b.design ? b.verdict.broken() : 10 * noMargin * anyMargin;
    if (one != other) return one > other;
    return a.burden.cost < b.burden.cost;
}

/// The cheapest cores in half of the places, the others spread over the rest.
std::vector<std::size_t> spread(std::size_t count, std::size_t places) {
    std::vector<std::size_t> all;
    if (count <= places) {
        for (std::size_t k = 0; k < count; ++k) all.push_back(k);
        return all;
    }
    const std::size_t first = places / 2, rest = places - first;
    for (std::size_t k = 0; k < first; ++k) all.push_back(k);
    for (std::size_t k = 0; k < rest; ++k) all.push_back(first + (count - first) * (2 * k + 1) / (2 * rest));
    return all;
}

/// The rounds of one search.
class Rounds {
public:
    Rounds(Trials& trials, const Plan& plan) : trials_(trials), plan_(plan) {}

    void run() {
        orders_ = bestOrders();
        for (const auto core : bestCores()) tryInOrders(core);
        trials_.tried(drafts_);
        trials_.refine(starts());
    }

private:
    /// Orders by what they do on the core with most room between its bounds: they differ at the top of the band, where
    /// cores do not.
    std::vector<std::size_t> bestOrders() {
        std::vector<Draft> drafts;
        std::size_t middle = 0;
        const auto room = [&](std::size_t k) { return trials_.cores()[k].mostTurns / trials_.cores()[k].leastTurns; };
        for (std::size_t k = 0; k < trials_.cores().size(); ++k)
            if (room(k) > room(middle)) middle = k;
        for (const auto o : spread(trials_.orders().size(), plan_.ordersTried))
            drafts.push_back({middle, o, sizesAt(trials_.cores()[middle], usualTurns)});
        return firstOf(trials_.tried(drafts), plan_.orders, [](const Trial& t) { return t.draft.order; });
    }
    std::vector<std::size_t> bestCores() {
        std::vector<Draft> drafts;
        if (orders_.empty()) return {};
        for (const auto c : spread(trials_.cores().size(), plan_.cores))
            drafts.push_back({c, orders_.front(), sizesAt(trials_.cores()[c], usualTurns)});
        return firstOf(trials_.tried(drafts), plan_.coresInOrders, [](const Trial& t) { return t.draft.core; });
    }
    void tryInOrders(std::size_t core) {
        for (const auto order : orders_)
            for (const double above : {1.08, usualTurns, 1.5}) {
                const bool known = above == usualTurns && order == orders_.front();
                const bool same = above != usualTurns && plan_.held.turns;
                if (!known && !same) drafts_.push_back({core, order, sizesAt(trials_.cores()[core], above)});
            }
    }
    /// The nearest of all that were tried, at most two a core and one a core and order; and among those that keep
    /// everything the strongest.
    std::vector<Trial> starts() {
        auto all = trials_.all();
        std::stable_sort(all.begin(), all.end(), nearer);
        std::vector<Trial> taken;
        for (const auto& t : all) {
            if (taken.size() >= plan_.starts || !t.design) break;
            const auto sameCore = [&](const Trial& o) { return o.draft.core == t.draft.core; };
            const auto same = [&](const Trial& o) { return sameCore(o) && o.draft.order == t.draft.order; };
            if (std::count_if(taken.begin(), taken.end(), sameCore) < 2 &&
                std::none_of(taken.begin(), taken.end(), same))
                taken.push_back(t);
        }
        return taken;
    }
    template <class Place>
    static std::vector<std::size_t> firstOf(std::vector<Trial> trials, std::size_t count, const Place& place) {
        std::erase_if(trials, [](const Trial& t) { return !t.design; });
        std::stable_sort(trials.begin(), trials.end(), nearer);
        std::vector<std::size_t> places;
        for (const auto& t : trials)
            if (places.size() < count && std::find(places.begin(), places.end(), place(t)) == places.end())
                places.push_back(place(t));
        return places;
    }

    Trials& trials_;
    const Plan& plan_;
    std::vector<std::size_t> orders_;
    std::vector<Draft> drafts_;
};

double distortionAt20(const design::Design& design, const analysis::Answer& answer, const std::stop_token& stop) {
    const auto rows = analysis::distortionTable(design, answer, {20.0}, {design.brief.operatingLevel}, stop);
    return rows.empty() ? std::nan("") : rows.front().thd;
}

Candidate candidateOf(const Trial& trial, const Bench& bench, const std::string& order, const std::stop_token& stop) {
    Candidate c;
    c.design = trial.design;
    c.answer = analysis::answer(*c.design, bench.shop, {}, stop);
    c.promises = c.answer->promises;
    c.weakest = anyMargin;
    for (const auto& p : c.promises) {
        if (marginOf(p) > c.weakest) continue;
        c.weakest = marginOf(p);
        c.weakestPromise = p.text;
    }
    c.burden = trial.burden;
    c.order = order;
    c.distortion = distortionAt20(*c.design, *c.answer, stop);
    return c;
}

/// In the list's order, with names that tell them apart.
void nameThem(std::vector<Candidate>& candidates, bool held) {
    for (std::size_t k = 0; k < candidates.size(); ++k)
        candidates[k].design = design::changed(*candidates[k].design, [&](design::Design& d) {
            d.name += ", candidate " + std::to_string(k + 1);
            d.revision = "A";
            d.note = held ? "Sought with a part of the design held." : "Sought from the brief alone.";
        });
}

CoreChoice heldCore(const Need& need, const Held& held) {
    CoreChoice choice;
    choice.core = held.from->core;
    choice.bobbin = held.from->bobbin.key;
    const auto& fewest = need.windings[need.fewest].winding.name;
    choice.leastTurns = design::conductorTurns(*held.from, *design::winding(*held.from, fewest)) / 1.25;
    choice.mostTurns = 1e5;
    return choice;
}

/// Those that can be wound in one order.
std::vector<CoreChoice> windable(std::vector<CoreChoice> cores, const Order& order, const Bench& bench) {
    std::erase_if(cores, [&](const auto& core) { return !drawn(bench, core, order, sizesAt(core, usualTurns)); });
    return cores;
}

}  // namespace

ShortList sought(const Need& need, const catalog::Catalog& shop, const Plan& plan, const std::stop_token& stop,
                 const Progress& progress) {
    const Bench bench{need, shop, stockOf(shop, plan.prices), plan.held};
    auto orders = plan.held.order ? std::vector{orderOf(*plan.held.from, need)} : ordersOf(need);
    refuseNone(orders);
    auto cores = plan.held.core ? std::vector{heldCore(need, plan.held)}
                                : windable(coreChoices(need, bench.stock, shop, plan.prices), orders.front(), bench);
    if (cores.empty()) refuseForWantOfACore();
    ShortList list;
    list.cores = cores.size();
    list.orders = orders.size();
    Trials trials(bench, plan, std::move(cores), std::move(orders), stop, progress);
    Rounds(trials, plan).run();
    list.tried = trials.count();
    list.stopped = stop.stop_requested();
    if (list.stopped) return list;
    list.kept = true;
    for (const auto k : chosen(trials.all(), plan.keep)) {
        const Trial& trial = trials.all()[k];
        auto c = candidateOf(trial, bench, orderWords(trials.orders()[trial.draft.order], need), stop);
        list.kept = list.kept && c.weakest >= 0;
        list.candidates.push_back(std::move(c));
    }
    std::stable_sort(list.candidates.begin(), list.candidates.end(),
                     [](const auto& a, const auto& b) { return a.weakest > b.weakest; });
    sayWhatIsGivenUp(list.candidates);
    nameThem(list.candidates, plan.held.from != nullptr);
    return list;
}

}  // namespace seek
