// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/short_list.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>

#include "units/joined.h"
#include "units/text.h"

namespace seek {

namespace {

using Ranks = std::vector<std::size_t>;

/// Takes places, one a core and order at first, and no design twice.
class Taking {
public:
    Taking(const std::vector<Trial>& trials, std::size_t keep) : trials_(trials), keep_(keep) {}
    void take(std::size_t k) {
        if (taken_.size() >= keep_) return;
        for (const auto t : taken_)
            if (*trials_[t].design == *trials_[k].design) return;
        taken_.push_back(k);
    }
    [[nodiscard]] bool isNew(std::size_t k) const {
        return std::none_of(taken_.begin(), taken_.end(), [&](std::size_t t) {
            return trials_[t].draft.core == trials_[k].draft.core && trials_[t].draft.order == trials_[k].draft.order;
        });
    }
    [[nodiscard]] const Ranks& taken() const { return taken_; }

private:
    const std::vector<Trial>& trials_;
    std::size_t keep_;
    Ranks taken_;
};

bool beats(const Trial& a, const Trial& b) {
    const auto of = [](const Trial& t) { return std::array{t.burden.cost, t.burden.volume(), -t.verdict.weakest()}; };
    const auto one = of(a), other = of(b);
    bool better = false;
    for (std::size_t k = 0; k < one.size(); ++k) {
        if (one[k] > other[k]) return false;
        better = better || one[k] < other[k];
    }
    return better;
}

template <class Aim>
std::size_t leastOf(const Ranks& places, const Aim& aim) {
    return *std::min_element(places.begin(), places.end(), [&](auto a, auto b) { return aim(a) < aim(b); });
}

std::string more(double now, double best) {
    return units::significant(100 * (now / best - 1), 2) + " %";
}

/// Each promise that is not kept with room to spare.
void addPromises(Candidate& c) {
    for (const auto& p : c.promises) {
        if (p.standing == analysis::Standing::Kept) continue;
        c.givesUp.push_back(
            units::joined({analysis::word(p.standing), ": ", p.text, ", is ",
                           p.mask ? units::write(p.kind, p.margin) + " inside" : units::write(p.kind, p.now)}));
    }
}

}  // namespace

std::vector<std::size_t> chosen(const std::vector<Trial>& trials, std::size_t keep) {
    Ranks keeping, others;
    for (std::size_t k = 0; k < trials.size(); ++k)
        if (trials[k].design) (trials[k].keepsAll() ? keeping : others).push_back(k);
    Taking taking(trials, keep);
    const auto cost = [&](std::size_t k) { return trials[k].burden.cost; };
    const auto volume = [&](std::size_t k) { return std::tuple(trials[k].burden.volume(), cost(k)); };
    const auto weakness = [&](std::size_t k) { return std::tuple(-trials[k].verdict.weakest(), cost(k)); };
    if (keeping.empty()) {
        std::stable_sort(others.begin(), others.end(),
                         [&](auto a, auto b) { return trials[a].verdict.broken() > trials[b].verdict.broken(); });
        for (const auto k : others)
            if (taking.isNew(k)) taking.take(k);
        return taking.taken();
    }
    taking.take(leastOf(keeping, cost));
    taking.take(leastOf(keeping, volume));
    taking.take(leastOf(keeping, weakness));
    Ranks best;
    for (const auto k : keeping)
        if (std::none_of(keeping.begin(), keeping.end(), [&](auto o) { return beats(trials[o], trials[k]); }))
            best.push_back(k);
    std::stable_sort(best.begin(), best.end(), [&](auto a, auto b) { return cost(a) < cost(b); });
    for (const auto k : best)
        if (taking.isNew(k)) taking.take(k);
    std::stable_sort(keeping.begin(), keeping.end(), [&](auto a, auto b) { return cost(a) < cost(b); });
    for (const auto k : keeping)
        if (taking.isNew(k)) taking.take(k);
    return taking.taken();
}

void sayWhatIsGivenUp(std::vector<Candidate>& candidates) {
    if (candidates.empty()) return;
    const auto least = [&](const auto& aim) {
        double best = std::numeric_limits<double>::infinity();
        for (const auto& c : candidates) best = std::min(best, std::isfinite(aim(c)) ? aim(c) : best);
        return best;
    };
    const auto cost = [](const Candidate& c) { return c.burden.cost; };
    const auto volume = [](const Candidate& c) { return c.burden.volume(); };
    const auto distortion = [](const Candidate& c) { return c.distortion; };
    const double cheapest = least(cost), smallest = least(volume), cleanest = least(distortion);
    constexpr double worthSaying = 1.02;
    for (auto& c : candidates) {
        c.givesUp.clear();
        if (c.burden.cost > cheapest * worthSaying)
            c.givesUp.push_back(more(c.burden.cost, cheapest) + (c.burden.priced
                                                                     ? " dearer than the cheapest of these"
                                                                     : " heavier than the lightest of these"));
        if (volume(c) > smallest * worthSaying)
            c.givesUp.push_back(more(volume(c), smallest) + " larger than the smallest");
        if (distortion(c) > cleanest * worthSaying)
            c.givesUp.push_back(more(distortion(c), cleanest) + " more distortion than the cleanest");
        addPromises(c);
    }
}

}  // namespace seek
