// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/draws.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "spread/normal.h"

namespace spread {

Draws::Draws(std::vector<Drawn> drawn, std::uint64_t seed, std::uint64_t lotSize)
    : drawn_(std::move(drawn)),
      lotSize_(std::max<std::uint64_t>(1, lotSize)),
      unitCause_(drawn_.size(), none),
      lotCause_(drawn_.size(), none),
      points_(seed, 2 * drawn_.size()) {
    for (std::size_t k = 0; k < drawn_.size(); ++k) {
        if (drawn_[k].lotShare >= 1) continue;
        unitCause_[k] = causes_.size();
        causes_.push_back({drawn_[k].name + " by unit", false, k, drawn_[k].lotShare <= 0});
    }
    std::map<std::string, std::size_t> lots;
    for (std::size_t k = 0; k < drawn_.size(); ++k) {
        if (drawn_[k].lotShare <= 0) continue;
        const std::string name = drawn_[k].lot.empty() ? drawn_[k].name : drawn_[k].lot;
        const auto [it, fresh] = lots.try_emplace(name, causes_.size());
        if (fresh) causes_.push_back({name + " by lot", true, k, drawn_[k].lotShare >= 1});
        lotCause_[k] = it->second;
    }
}

double Draws::normal(std::uint64_t unit, std::size_t cause) const {
    return normalQuantile(points_.at(causes_[cause].byLot ? unit / lotSize_ : unit, cause));
}

std::vector<double> Draws::deviates(std::uint64_t unit) const {
    std::vector<double> own(causes_.size());
    for (std::size_t c = 0; c < own.size(); ++c) own[c] = normal(unit, c);
    std::vector<double> all(drawn_.size(), 0);
    for (std::size_t k = 0; k < all.size(); ++k) {
        const double share = std::clamp(drawn_[k].lotShare, 0.0, 1.0);
        if (lotCause_[k] != none) all[k] += std::sqrt(share) * own[lotCause_[k]];
        if (unitCause_[k] != none) all[k] += std::sqrt(1 - share) * own[unitCause_[k]];
    }
    return all;
}

std::vector<double> Draws::causesOf(std::uint64_t unit) const {
    std::vector<double> own(causes_.size());
    for (std::size_t c = 0; c < own.size(); ++c) {
        const double z = normal(unit, c);
        own[c] = causes_[c].alone ? drawn_[causes_[c].drawn].law.standard(z) : z;
    }
    return own;
}

}  // namespace spread
