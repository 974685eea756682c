// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/harmonic_balance.h"

#include <algorithm>
#include <cmath>

#include "analysis/balance_search.h"
#include "analysis/one_cycle.h"

namespace analysis {
namespace {

using Complex = std::complex<double>;
using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

/// A search for one steady cycle.
class Search {
public:
    Search(const magnetics::CoreLoop& core, const magnetics::CoreLoop::Memory& before, const Surroundings& around,
           int samples)
        : core_(core),
          before_(before),
          around_(around),
          cycle_(static_cast<int>(around.load.size()) - 1, makesEven(before, around), samples),
          weight_(1 / std::abs(around.load[1])) {}

    Cycle run(const std::vector<Complex>& start) {
        Vector x = start.empty() ? linearWave() : packed(start);
        int rounds = 0;
        const State state = balanced(
            x, {settledShare * driveOf(around_)}, rounds, [this](const Vector& tried) { return stateAt(tried); },
            [this](const State& at) { return slopes(at); }, [this](const State& at) { return slopes(at); });
        return cycleOf(state, x, rounds);
    }

private:
    /// The core along one cycle of the wave.
    struct State {
        Followed core;
        std::vector<Complex> fluxes, fields;  // of the kinds
        Vector rest;                          // what the network's equations lack
        double off = 0;                       // its size
    };

    [[nodiscard]] Vector packed(const std::vector<Complex>& wave) const {
        Vector x(cycle_.unknowns());
        for (std::size_t i = 0; i < cycle_.kinds().size(); ++i) {
            const auto k = static_cast<std::size_t>(cycle_.kinds()[i]);
            const Complex value = k < wave.size() ? wave[k] : 0;
            x(2 * static_cast<Eigen::Index>(i)) = value.real();
            x(2 * static_cast<Eigen::Index>(i) + 1) = value.imag();
        }
        return x;
    }
    [[nodiscard]] Vector linearWave() const {
        const double slope = core_.initialSlope();
        std::vector<Complex> wave(2);
        wave[1] = around_.drive / (around_.load[1] + 1 / slope) * (1 + weight_ / slope);
        auto past = before_;
        const double left = core_.follow(past, before_.applied).value + weight_ * before_.applied;
        wave[0] = left + (around_.direct - before_.applied) * (slope + weight_);
        return packed(wave);
    }

    [[nodiscard]] State stateAt(const Vector& x) const {
        State state;
        auto memory = before_;
        const std::vector<double> wave = cycle_.inTime(x);
        state.core = onceRound(wave, cycle_.even(), [&](std::size_t n) {
            const magnetics::CurvePlace place = core_.followWave(memory, wave[n], weight_);
            return FollowedPlace{place.value, memory.applied, place.slope};
        });
        takeRest(state);
        return state;
    }

    void takeRest(State& state) const {
        state.fluxes = cycle_.coefficients(state.core.flux);
        state.fields = cycle_.coefficients(state.core.field);
        state.rest.resize(cycle_.unknowns());
        for (std::size_t i = 0; i < cycle_.kinds().size(); ++i) {
            const auto k = static_cast<std::size_t>(cycle_.kinds()[i]);
            const Complex rest = around_.load[k] * state.fluxes[i] + state.fields[i] - driveOf(around_, k);
            state.rest(2 * static_cast<Eigen::Index>(i)) = rest.real();
            state.rest(2 * static_cast<Eigen::Index>(i) + 1) = rest.imag();
        }
        state.off = state.rest.norm();
    }

    /// Slopes of the rest against the wave with the core's slope at each instant: dH = a dw, dB = (1 - c a) dw,
    /// a = 1 / (c + dB/dH).
    [[nodiscard]] Matrix slopes(const State& state) const {
        std::vector<double> share(state.core.slope.size());
        for (std::size_t n = 0; n < share.size(); ++n) share[n] = 1 / (weight_ + state.core.slope[n]);
        const Matrix field = cycle_.multiplier(share);
        Matrix slopes = Matrix::Identity(field.rows(), field.cols()) - weight_ * field;
        cycle_.turnRows(slopes, [&](std::size_t k) { return around_.load[k]; });
        slopes += field;
        if (cycle_.even()) slopes(1, 1) = 1;
        return slopes;
    }

    [[nodiscard]] Cycle cycleOf(const State& state, const Vector& x, int rounds) const {
        Cycle cycle;
        const std::size_t count = around_.load.size();
        cycle.flux.resize(count);
        cycle.field.resize(count);
        cycle.wave.resize(count);
        for (std::size_t i = 0; i < cycle_.kinds().size(); ++i) {
            const auto k = static_cast<std::size_t>(cycle_.kinds()[i]);
            cycle.flux[k] = state.fluxes[i];
            cycle.field[k] = state.fields[i];
            cycle.wave[k] = {x(2 * static_cast<Eigen::Index>(i)), x(2 * static_cast<Eigen::Index>(i) + 1)};
        }
        cycle.fluxes = state.core.flux;
        cycle.fields = state.core.field;
        cycle.drive = driveOf(around_);
        cycle.rounds = rounds;
        cycle.settled = state.off <= settledShare * driveOf(around_);
        return cycle;
    }

    const magnetics::CoreLoop& core_;
    const magnetics::CoreLoop::Memory& before_;
    const Surroundings& around_;
    OneCycle cycle_;
    double weight_;  // c
};

}  // namespace

bool makesEven(const magnetics::CoreLoop::Memory& before, const Surroundings& around) {
    return around.direct != 0 || before.applied != 0 ||
           std::any_of(before.blocks.begin(), before.blocks.end(), [](const auto& b) { return b.u != 0; });
}

Cycle steadyCycle(const magnetics::CoreLoop& core, const magnetics::CoreLoop::Memory& before,
                  const Surroundings& around, const std::vector<Complex>& start, int samples) {
    return Search(core, before, around, samples).run(start);
}

}  // namespace analysis
