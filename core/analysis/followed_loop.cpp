// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/followed_loop.h"

#include <utility>

namespace analysis {
namespace {

/// A number's slope against the wave at some samples.
using Slopes = std::vector<std::pair<std::size_t, double>>;

void add(Slopes& sum, const Slopes& other, double factor) {
    for (const auto& [sample, slope] : other) {
        const auto known = std::find_if(sum.begin(), sum.end(), [s = sample](const auto& e) { return e.first == s; });
        if (known == sum.end())
            sum.emplace_back(sample, factor * slope);
        else
            known->second += factor * slope;
    }
}

Slopes times(double factor, const Slopes& slopes) {
    Slopes made;
    add(made, slopes, factor);
    return made;
}

/// A loop led from sample to sample.
class Leader {
public:
    Leader(const LoopStart& start, const std::vector<double>& wave)
        : memory(start.memory), start_(start), wave_(wave), field_(start.field) {
        constexpr double share = 1e-12;
        for (const double w : wave) tolerance_ = std::max(tolerance_, share * std::abs(w));
    }
    magnetics::LoopPlace go(std::size_t n) {
        if (steepness_ > 0) field_ += (wave_[n] - before_) / steepness_;
        const magnetics::LoopPlace place = start_.loop.followWave(memory, field_, wave_[n], start_.weight, tolerance_);
        before_ = wave_[n];
        steepness_ = place.slope + start_.weight;
        return place;
    }
    [[nodiscard]] double field() const noexcept { return field_; }
    magnetics::PlayMemory memory;

private:
    const LoopStart& start_;
    const std::vector<double>& wave_;
    double field_, tolerance_ = 0;
    double before_ = 0, steepness_ = 0;  // of the sample before
};

class Turns {
public:
    Turns(const LoopStart& start, const std::vector<double>& wave, bool even)
        : start_(start), leader_(start, wave), count_(wave.size()), even_(even) {}

    FollowedPlace go(std::size_t n) {
        const magnetics::LoopPlace place = leader_.go(n);
        auto& memory = leader_.memory;
        // From a reversal  u = u_r +- 2 U(|v - v_r| / 2):  du = U' (dv - dv_r) + du_r.
        Slopes turn;
        if (!memory.reversals.empty() && memory.reversals.back().mark >= 0) {
            const Visit& from = visits_[static_cast<std::size_t>(memory.reversals.back().mark)];
            turn = from.plays;
            add(turn, from.compressed, -place.along);
        }
        const double own = 1 / (start_.weight + place.slope);
        Slopes field = times(-own * place.byPlays, turn);
        note(n, field);
        add(field, {{n, own}}, 1);
        Visit visit{times(place.compressed, field), std::move(turn)};
        add(visit.plays, visit.compressed, place.along);
        memory.mark = static_cast<int>(visits_.size());
        visits_.push_back(std::move(visit));
        return {place.value, leader_.field(), place.slope};
    }
    [[nodiscard]] const ByTurns& all() const noexcept { return byTurns_; }

private:
    /// What was seen of g(H) and u at a sample.
    struct Visit {
        Slopes compressed, plays;
    };
    void note(std::size_t n, const Slopes& field) {
        const std::size_t opposite = (n + count_ / 2) % count_;
        const auto put = [&](std::vector<double>& column, double slope) {
            column[n] = slope;
            if (!even_) column[opposite] = -slope;
        };
        for (auto& [sample, column] : byTurns_) put(column, 0);
        for (const auto& [sample, slope] : field) put(byTurns_.try_emplace(sample, count_, 0.0).first->second, slope);
    }

    const LoopStart& start_;
    Leader leader_;
    std::size_t count_;
    bool even_;
    std::vector<Visit> visits_;
    ByTurns byTurns_;
};

}  // namespace

Followed followedLoop(const LoopStart& start, const std::vector<double>& wave, bool even) {
    Leader leader(start, wave);
    return onceRound(wave, even, [&](std::size_t n) {
        const magnetics::CurvePlace place = leader.go(n);
        return FollowedPlace{place.value, leader.field(), place.slope};
    });
}

ByTurns slopesByTurns(const LoopStart& start, const std::vector<double>& wave, bool even) {
    if (!start.loop.hysteretic()) return {};
    Turns turns(start, wave, even);
    (void)onceRound(wave, even, [&](std::size_t n) { return turns.go(n); });
    return turns.all();
}

}  // namespace analysis
