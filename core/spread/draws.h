// SPDX-License-Identifier: GPL-3.0-or-later
// The deviates of each unit of a run.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "spread/law.h"
#include "spread/sobol.h"

namespace spread {

/// How one varying number is drawn.
struct Drawn {
    std::string name;
    Law law;
    double lotShare = 0;
    std::string lot;  ///< those of the same name share their lot's deviate; "" its own
    bool operator==(const Drawn&) const = default;
};

/// An independent standard normal cause: what a lot has in common, or what a unit has by itself.
struct Cause {
    /// The deviate of a drawn number is the sum of its causes, each times its weight; squares of weights add up to 1.
    struct Effect {
        std::size_t drawn = 0;
        double weight = 1;
    };
    std::string name;  ///< "stack height by lot", "stack height by unit"
    bool byLot = false;
    std::vector<Effect> effects;  ///< several where numbers share a lot
};

/// What deviates by itself, units' own causes first, then lots'. Numbers that share a lot are correlated by it,
/// sqrt(s_i s_k) in all: an effect on several of them is summed before it is squared.
[[nodiscard]] std::vector<Cause> causesOf(const std::vector<Drawn>& drawn);

/// z = sqrt(s) z_lot + sqrt(1 - s) z_unit for each varying number, s its lot share: unit k depends on seed and k alone,
/// its lot on k / lotSize. Unit deviates first among the dimensions, lot deviates behind them, numbered by lot.
class Draws {
public:
    Draws(std::vector<Drawn> drawn, std::uint64_t seed, std::uint64_t lotSize);
    [[nodiscard]] std::vector<double> deviates(std::uint64_t unit) const;
    [[nodiscard]] const std::vector<Cause>& causes() const noexcept { return causes_; }
    /// How far each number is from its mean, in standard deviations of its law.
    [[nodiscard]] std::vector<double> standards(std::uint64_t unit) const;

private:
    [[nodiscard]] double normal(std::uint64_t unit, std::size_t cause) const;
    std::vector<Drawn> drawn_;
    std::uint64_t lotSize_;
    std::vector<Cause> causes_;  // in the order of the dimensions
    EvenPoints points_;
};

}  // namespace spread
