// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/draws.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "spread/normal.h"

namespace spread {

std::vector<Cause> causesOf(const std::vector<Drawn>& drawn) {
    const auto share = [&](std::size_t k) { return std::clamp(drawn[k].lotShare, 0.0, 1.0); };
    std::vector<Cause> causes;
    for (std::size_t k = 0; k < drawn.size(); ++k)
        if (share(k) < 1) causes.push_back({drawn[k].name + " by unit", false, {{k, std::sqrt(1 - share(k))}}});
    std::map<std::string, std::size_t> lots;
    for (std::size_t k = 0; k < drawn.size(); ++k) {
        if (share(k) <= 0) continue;
        const std::string name = drawn[k].lot.empty() ? drawn[k].name : drawn[k].lot;
        const auto [it, fresh] = lots.try_emplace(name, causes.size());
        if (fresh) causes.push_back({name + " by lot", true, {}});
        causes[it->second].effects.push_back({k, std::sqrt(share(k))});
    }
    return causes;
}

Draws::Draws(std::vector<Drawn> drawn, std::uint64_t seed, std::uint64_t lotSize)
    : drawn_(std::move(drawn)),
      lotSize_(std::max<std::uint64_t>(1, lotSize)),
      causes_(causesOf(drawn_)),
      points_(seed, 2 * drawn_.size()) {}

double Draws::normal(std::uint64_t unit, std::size_t cause) const {
    return normalQuantile(points_.at(causes_[cause].byLot ? unit / lotSize_ : unit, cause));
}

std::vector<double> Draws::deviates(std::uint64_t unit) const {
    std::vector<double> all(drawn_.size(), 0);
    for (std::size_t c = 0; c < causes_.size(); ++c) {
        const double own = normal(unit, c);
        for (const auto& effect : causes_[c].effects) all[effect.drawn] += effect.weight * own;
    }
    return all;
}

std::vector<double> Draws::standards(std::uint64_t unit) const {
    auto all = deviates(unit);
    for (std::size_t k = 0; k < all.size(); ++k) all[k] = drawn_[k].law.standard(all[k]);
    return all;
}

}  // namespace spread
