// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/harmonic_balance.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

using Complex = std::complex<double>;
using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

constexpr double settledShare = 1e-7;  // of the drive
constexpr int mostRounds = 60;

/// A search for one steady cycle.
class Search {
public:
    Search(const magnetics::CoreLoop& core, const magnetics::CoreLoop::Memory& before, const Surroundings& around,
           int samples)
        : core_(core),
          before_(before),
          around_(around),
          turn_(static_cast<std::size_t>(samples)),
          mask_(turn_.size() - 1) {
        for (std::size_t n = 0; n < turn_.size(); ++n)
            turn_[n] = std::polar(1.0, 2 * std::numbers::pi * double(n) / samples);
        weight_ = 1 / std::abs(around.load[1]);
        even_ = around.direct != 0 || before.applied != 0 ||
                std::any_of(before.blocks.begin(), before.blocks.end(), [](const auto& b) { return b.u != 0; });
        for (int k = even_ ? 0 : 1; k < static_cast<int>(around.load.size()); k += even_ ? 1 : 2) kinds_.push_back(k);
    }

    Cycle run(const std::vector<Complex>& start) {
        Vector x = start.empty() ? linearWave() : packed(start);
        State now = stateAt(x);
        Matrix inverse = slopes(now).inverse();
        int rounds = 1;
        int sinceSlopes = 0;
        while (now.off > settledShare * scale() && rounds < mostRounds) {
            Vector step = -inverse * now.rest;
            State next = stateAt(x + step);
            ++rounds;
            if (next.off > 0.5 * now.off && sinceSlopes > 0) {  // corrections no longer help: fresh slopes
                inverse = slopes(now).inverse();
                sinceSlopes = 0;
                step = -inverse * now.rest;
                next = stateAt(x + step);
                ++rounds;
            }
            for (int halved = 0; next.off > now.off && halved < 6; ++halved, ++rounds) {
                step /= 2;
                next = stateAt(x + step);
            }
            const Vector lag = inverse * (next.rest - now.rest);
            const double share = step.dot(lag);
            if (share > 1e-12 * step.squaredNorm()) inverse += (step - lag) * (step.transpose() * inverse) / share;
            ++sinceSlopes;
            x += step;
            now = std::move(next);
        }
        return cycleOf(now, x, rounds);
    }

private:
    /// The core along one cycle of the wave.
    struct State {
        std::vector<double> flux, field, slope;
        std::vector<Complex> fluxes, fields;  // of the kinds
        Vector rest;                          // what the network's equations lack
        double off = 0;                       // its size
    };

    [[nodiscard]] double scale() const { return std::abs(around_.drive) + std::abs(around_.direct); }
    [[nodiscard]] const Complex& turn(std::size_t k, std::size_t n) const { return turn_[k * n & mask_]; }

    [[nodiscard]] Vector packed(const std::vector<Complex>& wave) const {
        Vector x(2 * static_cast<Eigen::Index>(kinds_.size()));
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            const auto k = static_cast<std::size_t>(kinds_[i]);
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
        const std::size_t count = turn_.size();
        std::vector<double> wave(count, 0);
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            const auto k = static_cast<std::size_t>(kinds_[i]);
            const auto at = 2 * static_cast<Eigen::Index>(i);
            const double twice = k == 0 ? 1 : 2, real = twice * x(at), imaginary = twice * x(at + 1);
            for (std::size_t n = 0; n < count; ++n) wave[n] += real * turn(k, n).real() - imaginary * turn(k, n).imag();
        }
        State state;
        state.flux.resize(count);
        state.field.resize(count);
        state.slope.resize(count);
        const auto farthest =
            std::max_element(wave.begin(), wave.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
        const auto first = static_cast<std::size_t>(farthest - wave.begin());
        auto memory = before_;
        if (even_) {  // what a past has left is closed by both turning points
            core_.followWave(memory, wave[first], weight_);
            const auto [lowest, highest] = std::minmax_element(wave.begin(), wave.end());
            core_.followWave(memory, wave[first] > 0 ? *lowest : *highest, weight_);
        }
        // Odd harmonics alone: the second half of the cycle is the first with the other sign.
        for (std::size_t i = 0; i < (even_ ? count : count / 2); ++i) {
            const std::size_t n = (first + i) % count;
            const magnetics::CurvePlace place = core_.followWave(memory, wave[n], weight_);
            state.flux[n] = place.value;
            state.field[n] = memory.applied;
            state.slope[n] = place.slope;
            if (even_) continue;
            const std::size_t opposite = (n + count / 2) % count;
            state.flux[opposite] = -place.value;
            state.field[opposite] = -memory.applied;
            state.slope[opposite] = place.slope;
        }
        takeRest(state);
        return state;
    }

    [[nodiscard]] Complex coefficient(const std::vector<double>& values, std::size_t k) const {
        double real = 0, imaginary = 0;
        for (std::size_t n = 0; n < values.size(); ++n) {
            real += values[n] * turn(k, n).real();
            imaginary -= values[n] * turn(k, n).imag();
        }
        return Complex(real, imaginary) / double(values.size());
    }

    void takeRest(State& state) const {
        state.rest.resize(2 * static_cast<Eigen::Index>(kinds_.size()));
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            const auto k = static_cast<std::size_t>(kinds_[i]);
            state.fluxes.push_back(coefficient(state.flux, k));
            state.fields.push_back(coefficient(state.field, k));
            Complex rest = around_.load[k] * state.fluxes.back() + state.fields.back();
            if (k == 1) rest -= around_.drive;
            if (k == 0) rest -= around_.direct;
            state.rest(2 * static_cast<Eigen::Index>(i)) = rest.real();
            state.rest(2 * static_cast<Eigen::Index>(i) + 1) = rest.imag();
        }
        state.off = state.rest.norm();
    }

    /// Slopes of the rest against the wave with the core's slope at each instant: dH = a dw, dB = (1 - c a) dw,
    /// a = 1 / (c + dB/dH).
    [[nodiscard]] Matrix slopes(const State& state) const {
        std::vector<double> share(state.slope.size());
        for (std::size_t n = 0; n < share.size(); ++n) share[n] = 1 / (weight_ + state.slope[n]);
        const auto highest = static_cast<std::size_t>(kinds_.back());
        std::vector<Complex> tone(2 * highest + 1);
        for (std::size_t m = 0; m < tone.size(); m += even_ ? 1 : 2) tone[m] = coefficient(share, m);
        const auto toneAt = [&](int m) {
            return m >= 0 ? tone[static_cast<std::size_t>(m)] : std::conj(tone[static_cast<std::size_t>(-m)]);
        };
        const auto count = static_cast<Eigen::Index>(kinds_.size());
        Matrix slopes = Matrix::Zero(2 * count, 2 * count);
        for (Eigen::Index i = 0; i < count; ++i) {
            const int k = kinds_[static_cast<std::size_t>(i)];
            const Complex load = around_.load[static_cast<std::size_t>(k)];
            for (Eigen::Index j = 0; j < count; ++j) {
                const int l = kinds_[static_cast<std::size_t>(j)];
                const Complex direct = (1.0 - weight_ * load) * toneAt(k - l) + (k == l ? load : 0);
                const Complex mirrored = l == 0 ? 0 : (1.0 - weight_ * load) * toneAt(k + l);
                const Complex real = direct + mirrored, imaginary = Complex(0, 1) * (direct - mirrored);
                slopes(2 * i, 2 * j) = real.real();
                slopes(2 * i + 1, 2 * j) = real.imag();
                if (l == 0) continue;  // a mean has no imaginary part
                slopes(2 * i, 2 * j + 1) = imaginary.real();
                slopes(2 * i + 1, 2 * j + 1) = imaginary.imag();
            }
            if (k == 0) slopes(2 * i + 1, 2 * i + 1) = 1;
        }
        return slopes;
    }

    [[nodiscard]] Cycle cycleOf(const State& state, const Vector& x, int rounds) const {
        Cycle cycle;
        const std::size_t count = around_.load.size();
        cycle.flux.resize(count);
        cycle.field.resize(count);
        cycle.wave.resize(count);
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            const auto k = static_cast<std::size_t>(kinds_[i]);
            cycle.flux[k] = state.fluxes[i];
            cycle.field[k] = state.fields[i];
            cycle.wave[k] = {x(2 * static_cast<Eigen::Index>(i)), x(2 * static_cast<Eigen::Index>(i) + 1)};
        }
        cycle.fluxes = state.flux;
        cycle.fields = state.field;
        cycle.rounds = rounds;
        cycle.settled = state.off <= settledShare * scale();
        return cycle;
    }

    const magnetics::CoreLoop& core_;
    const magnetics::CoreLoop::Memory& before_;
    const Surroundings& around_;
    std::vector<Complex> turn_;  // exp(j 2 pi n / count)
    std::size_t mask_;           // count is a power of two
    bool even_ = true;           // something makes even harmonics
    std::vector<int> kinds_;     // harmonics that are sought
    double weight_ = 1;          // c
};

}  // namespace

Cycle steadyCycle(const magnetics::CoreLoop& core, const magnetics::CoreLoop::Memory& before,
                  const Surroundings& around, const std::vector<Complex>& start, int samples) {
    return Search(core, before, around, samples).run(start);
}

}  // namespace analysis
