// SPDX-License-Identifier: GPL-3.0-or-later
// Units drawn for the tests of causes and fits.
#pragma once

#include <cstdlib>
#include <functional>
#include <random>

#include "learn/cause.h"
#include "plans.h"
#include "spread/normal.h"
#include "spread/run.h"

namespace drawn {

/// A hundredth of what is counted, or all of it with COILWRIGHT_FULL in the environment.
inline int thousand() {
    return std::getenv("COILWRIGHT_FULL") != nullptr ? 1000 : 10;
}

/// Standard normal numbers, the same for the same seed everywhere: the engine's numbers are fixed by the language,
/// those of its distributions are not.
class Normals {
public:
    explicit Normals(std::uint64_t seed) : engine_(seed) {}
    double even() { return (static_cast<double>(engine_() >> 11U) + 0.5) * 0x1p-53; }
    double operator()() { return spread::normalQuantile(even()); }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(even() * static_cast<double>(count)); }

private:
    std::mt19937_64 engine_;
};

inline const learn::CauseFinder& finder(const std::string& name) {
    static std::map<std::string, std::unique_ptr<learn::CauseFinder>> all;
    auto& one = all[name];
    if (!one) {
        const auto& made = plans::demo(name);
        one = std::make_unique<learn::CauseFinder>(made.design, made.prediction, made.plan, demos::shopCatalog(),
                                                   plans::tolerances(), made.fixture);
    }
    return *one;
}

/// Deviates of a unit that stands in lots of its own.
inline std::vector<double> deviatesOf(const spread::Variation& variation, const std::function<double()>& normals) {
    std::vector<double> deviates(variation.all.size(), 0);
    for (const auto& cause : spread::causesOf(spread::drawnOf(variation.all))) {
        const double one = normals();
        for (const auto& effect : cause.effects) deviates[effect.drawn] += effect.weight * one;
    }
    return deviates;
}

/// A unit as the shop's tolerances make it.
inline design::Design unitOf(const spread::Variation& variation, Normals& normals) {
    spread::UnitDesign unit(variation);
    return unit.deviating(deviatesOf(variation, [&] { return normals(); }));
}

}  // namespace drawn
