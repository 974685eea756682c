// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/eddy_search.h"

#include <cmath>

namespace analysis {

namespace {

/// Turning points that pass from sample to sample keep the lack from vanishing altogether.
constexpr double eddySettledShare = 5e-6;

Eigen::VectorXd unpacked(const std::vector<std::complex<double>>& wave) {
    return Eigen::Map<const Eigen::VectorXd>(reinterpret_cast<const double*>(wave.data()),
                                             2 * static_cast<Eigen::Index>(wave.size()));
}

}  // namespace

EddySearch::EddySearch(const magnetics::CoreLoop& core, const std::vector<PlacedSheets>& sheets, double angular,
                       int samples, const magnetics::CoreLoop::Memory& before, const Surroundings& around)
    : sheets_(sheets),
      angular_(angular),
      before_(before),
      around_(around),
      cycle_(static_cast<int>(around.load.size()) - 1, makesEven(before, around), samples) {
    // Where nothing loads a core that has no eddies the wave is the field.
    constexpr double least = 1e-3;
    for (const auto& s : sheets_)
        weights_.push_back(1 / (std::abs(around.load[1]) + angular * s.block->eddy / 2 + least / core.initialSlope()));
}

Cycle EddySearch::run(const Cycle* start) const {
    const bool near = start != nullptr && static_cast<Index>(start->wave.size()) == size() / 2;
    Vector x = near ? unpacked(start->wave) : rest();
    // A neighbour at another level, made as large.
    if (near && !cycle_.even()) x *= driveOf(around_) / start->drive;
    int rounds = 0;
    const State state = balanced(
        x, {settledShare * driveOf(around_), 60, 3}, rounds, [this](const Vector& tried) { return stateAt(tried); },
        [this](const State& at) { return slopes(at); }, [this](const State& at) { return evenly(at); });
    return cycleOf(state, x, rounds);
}

/// As the past has left it.
EddySearch::Vector EddySearch::rest() const {
    Vector x = Vector::Zero(size());
    if (!cycle_.even()) return x;
    for (std::size_t b = 0; b < sheets_.size(); ++b) {
        const double field = before_.fields[b];
        const double flux = sheets_[b].block->loop.at(before_.blocks[b], field).value;
        for (Index i = 0; i < sheets_[b].count(); ++i) x(at(sheets_[b], i)) = flux + weights_[b] * field;
    }
    return x;
}

EddySearch::State EddySearch::stateAt(const Vector& x) const {
    State state;
    state.flux.assign(cycle_.samples(), 0);
    state.field.assign(cycle_.samples(), 0);
    std::vector<std::vector<Complex>> surfaces;  // H + drop of each alloy
    for (std::size_t b = 0; b < sheets_.size(); ++b) {
        const auto& sheets = sheets_[b];
        std::vector<double> mean(cycle_.samples(), 0), slopes(cycle_.samples());
        for (Index i = 0; i < sheets.count(); ++i) {
            state.waves.push_back(cycle_.inTime(x.segment(at(sheets, i), cycle_.unknowns())));
            state.places.push_back(followedLoop(loopOf(b), state.waves.back(), cycle_.even()));
            for (std::size_t n = 0; n < mean.size(); ++n) mean[n] += sheets.mass(i) * state.places.back().flux[n];
        }
        std::vector<double> applied = state.places.back().field;
        for (std::size_t n = 0; n < mean.size(); ++n) {
            const magnetics::CurvePlace drop = sheets.block->joint.at(mean[n]);
            applied[n] += drop.value;
            slopes[n] = drop.slope;
            state.flux[n] += sheets.block->share * mean[n];
        }
        surfaces.push_back(cycle_.coefficients(applied));
        if (b == 0) state.field = std::move(applied);
        state.jointSlopes.push_back(std::move(slopes));
    }
    state.fluxes = cycle_.coefficients(state.flux);
    state.fields = surfaces.front();
    takeRest(state, surfaces);
    return state;
}

void EddySearch::takeRest(State& state, const std::vector<std::vector<Complex>>& surfaces) const {
    state.rest.resize(size());
    for (std::size_t b = 0; b < sheets_.size(); ++b) {
        const auto& sheets = sheets_[b];
        std::vector<std::vector<Complex>> fluxes, fields;
        for (Index i = 0; i < sheets.count(); ++i) {
            const Followed& place = state.places[static_cast<std::size_t>(sheets.first + i)];
            fluxes.push_back(cycle_.coefficients(place.flux));
            fields.push_back(cycle_.coefficients(place.field));
        }
        for (std::size_t n = 0; n < cycle_.kinds().size(); ++n) {
            const auto k = static_cast<std::size_t>(cycle_.kinds()[n]);
            const auto put = [&](Index place, const Complex& value) {
                state.rest(at(sheets, place) + 2 * static_cast<Index>(n)) = value.real();
                state.rest(at(sheets, place) + 2 * static_cast<Index>(n) + 1) = value.imag();
            };
            for (Index i = 0; i < sheets.surface(); ++i) {
                Complex sum = driven(sheets, i, k) * fluxes[static_cast<std::size_t>(i)][n];
                for (Index j = 0; j < sheets.count(); ++j)
                    sum += spread(sheets, i, j) * fields[static_cast<std::size_t>(j)][n];
                put(i, sum);
            }
            put(sheets.surface(), around_.load[k] * state.fluxes[n] + surfaces[b][n] - driveOf(around_, k));
        }
    }
    state.off = state.rest.norm();
}

Cycle EddySearch::cycleOf(const State& state, const Vector& x, int rounds) const {
    Cycle cycle;
    cycle.flux.resize(around_.load.size());
    cycle.field.resize(around_.load.size());
    for (std::size_t i = 0; i < cycle_.kinds().size(); ++i) {
        const auto k = static_cast<std::size_t>(cycle_.kinds()[i]);
        cycle.flux[k] = state.fluxes[i];
        cycle.field[k] = state.fields[i];
    }
    for (Index i = 0; i < x.size(); i += 2) cycle.wave.emplace_back(x(i), x(i + 1));
    cycle.fluxes = state.flux;
    cycle.fields = state.field;
    cycle.drive = driveOf(around_);
    cycle.rounds = rounds;
    cycle.settled = state.off <= eddySettledShare * driveOf(around_);
    return cycle;
}

}  // namespace analysis
