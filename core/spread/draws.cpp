// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/draws.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "spread/normal.h"

namespace spread {

Draws::Draws(std::vector<Drawn> drawn, std::uint64_t seed, std::uint64_t lotSize)
    : drawn_(std::move(drawn)), lotSize_(std::max<std::uint64_t>(1, lotSize)), points_(seed, 2 * drawn_.size()) {
    const auto share = [this](std::size_t k) { return std::clamp(drawn_[k].lotShare, 0.0, 1.0); };
    for (std::size_t k = 0; k < drawn_.size(); ++k)
        if (share(k) < 1) causes_.push_back({drawn_[k].name + " by unit", false, {{k, std::sqrt(1 - share(k))}}});
    std::map<std::string, std::size_t> lots;
    for (std::size_t k = 0; k < drawn_.size(); ++k) {
        if (share(k) <= 0) continue;
        const std::string name = drawn_[k].lot.empty() ? drawn_[k].name : drawn_[k].lot;
        const auto [it, fresh] = lots.try_emplace(name, causes_.size());
        if (fresh) causes_.push_back({name + " by lot", true, {}});
        causes_[it->second].effects.push_back({k, std::sqrt(share(k))});
    }
}

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
