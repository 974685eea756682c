// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/eddy_balance.h"

#include <cmath>
#include <numbers>

#include "analysis/balance_search.h"
#include "analysis/followed_loop.h"
#include "magnetics/sheet_grid.h"

namespace analysis {

using Complex = std::complex<double>;
using Index = Eigen::Index;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

/// The sheets of one alloy with the places at which their field is sought.
struct PlacedSheets {
    const magnetics::CoreLoop::Block* block;
    magnetics::SheetGrid grid;
    Index first;  ///< of its places among those of all
    [[nodiscard]] Index count() const { return static_cast<Index>(grid.places.size()); }
    [[nodiscard]] Index surface() const { return count() - 1; }
    [[nodiscard]] double mass(Index place) const { return grid.weights[static_cast<std::size_t>(place)]; }
};

namespace {

/// Turning points that pass from sample to sample keep the lack from vanishing altogether.
constexpr double eddySettledShare = 5e-6;

/// A search for one steady cycle. Unknown are the waves at every place of every alloy's sheets, in a row.
class EddySearch {
public:
    EddySearch(const magnetics::CoreLoop& core, const std::vector<PlacedSheets>& sheets, double angular, int samples,
               const magnetics::CoreLoop::Memory& before, const Surroundings& around)
        : sheets_(sheets),
          angular_(angular),
          before_(before),
          around_(around),
          cycle_(static_cast<int>(around.load.size()) - 1, makesEven(before, around), samples) {
        // Where nothing loads a core that has no eddies the wave is the field.
        constexpr double least = 1e-3;
        for (const auto& s : sheets_)
            weights_.push_back(1 /
                               (std::abs(around.load[1]) + angular * s.block->eddy / 2 + least / core.initialSlope()));
    }

    Cycle run(const Cycle* start) {
        const bool near = start != nullptr && static_cast<Index>(start->wave.size()) == size() / 2;
        Vector x = near ? packed(start->wave) : rest();
        // A neighbour at another level, made as large.
        if (near && !cycle_.even()) x *= driveOf(around_) / start->drive;
        int rounds = 0;
        const State state = balanced(
            x, {eddySettledShare * driveOf(around_), 60, 3}, rounds,
            [this](const Vector& tried) { return stateAt(tried); }, [this](const State& at) { return slopes(at); },
            [this](const State& at) { return evenly(at); });
        return cycleOf(state, x, rounds);
    }

private:
    struct State {
        std::vector<std::vector<double>> waves;  // of the places, over the cycle
        std::vector<Followed> places;
        std::vector<std::vector<double>> jointSlopes;  // of each alloy's joints, over the cycle
        std::vector<double> flux, field;               // the stack's mean and N I / l, over the cycle
        std::vector<Complex> fluxes, fields;           // of the kinds
        Vector rest;
        double off = 0;
    };

    [[nodiscard]] Index size() const { return (sheets_.back().first + sheets_.back().count()) * cycle_.unknowns(); }
    [[nodiscard]] Index at(const PlacedSheets& sheets, Index place) const {
        return (sheets.first + place) * cycle_.unknowns();
    }
    [[nodiscard]] static Vector packed(const std::vector<Complex>& wave) {
        return Eigen::Map<const Vector>(reinterpret_cast<const double*>(wave.data()),
                                        2 * static_cast<Index>(wave.size()));
    }
    /// As the past has left it.
    [[nodiscard]] Vector rest() const {
        Vector x = Vector::Zero(size());
        if (!cycle_.even()) return x;
        for (std::size_t b = 0; b < sheets_.size(); ++b) {
            const double field = before_.fields[b];
            const double flux = sheets_[b].block->loop.at(before_.blocks[b], field).value;
            for (Index i = 0; i < sheets_[b].count(); ++i) x(at(sheets_[b], i)) = flux + weights_[b] * field;
        }
        return x;
    }

    [[nodiscard]] LoopStart loopOf(std::size_t b) const {
        return {sheets_[b].block->loop, before_.blocks[b], before_.fields[b], weights_[b]};
    }

    [[nodiscard]] State stateAt(const Vector& x) const {
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

    void takeRest(State& state, const std::vector<std::vector<Complex>>& surfaces) const {
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

    /// Coefficients of the equation within a sheet, in A/m of the place's own field.
    [[nodiscard]] static double spread(const PlacedSheets& sheets, Index i, Index j) {
        return sheets.grid.stiffness(i, j) / sheets.grid.stiffness(i, i);
    }
    [[nodiscard]] Complex driven(const PlacedSheets& sheets, Index i, std::size_t k) const {
        return {0, double(k) * angular_ * sheets.block->eddy * sheets.mass(i) / sheets.grid.stiffness(i, i)};
    }

    /// Slopes of the rest against the waves with each place's slope at each instant: dH = a dw, dB = (1 - c a) dw,
    /// a = 1 / (c + dB/dH).
    [[nodiscard]] Matrix slopes(const State& state) const {
        const Index unknowns = cycle_.unknowns();
        Matrix slopes = Matrix::Zero(size(), size());
        for (std::size_t b = 0; b < sheets_.size(); ++b) {
            const auto& sheets = sheets_[b];
            for (Index i = 0; i < sheets.count(); ++i) {
                const auto number = static_cast<std::size_t>(sheets.first + i);
                const Followed& place = state.places[number];
                std::vector<double> share(place.slope.size()), bent(place.slope.size());
                for (std::size_t n = 0; n < share.size(); ++n) {
                    share[n] = 1 / (weights_[b] + place.slope[n]);
                    bent[n] = state.jointSlopes[b][n] * sheets.mass(i) * place.slope[n] * share[n];
                }
                Matrix field = cycle_.multiplier(share), drop = cycle_.multiplier(bent);
                for (const auto& [sample, slope] : slopesByTurns(loopOf(b), state.waves[number], cycle_.even())) {
                    std::vector<double> bend(slope.size());
                    for (std::size_t n = 0; n < bend.size(); ++n)
                        bend[n] = -state.jointSlopes[b][n] * sheets.mass(i) * weights_[b] * slope[n];
                    const Eigen::RowVectorXd there = cycle_.sampling(sample);
                    field += cycle_.packed(slope) * there;
                    drop += cycle_.packed(bend) * there;
                }
                const Matrix flux = Matrix::Identity(unknowns, unknowns) - weights_[b] * field;
                const Index column = at(sheets, i);
                const auto block = [&](Index row) { return slopes.block(row, column, unknowns, unknowns); };
                for (Index j = 0; j < sheets.surface(); ++j) block(at(sheets, j)) += spread(sheets, j, i) * field;
                if (i < sheets.surface())
                    block(column) += turned(flux, [&](std::size_t k) { return driven(sheets, i, k); });
                else
                    block(column) += field;
                block(at(sheets, sheets.surface())) += drop;
                const double part = sheets.block->share * sheets.mass(i);
                const Matrix loaded = turned(flux, [&](std::size_t k) { return part * around_.load[k]; });
                for (const auto& other : sheets_) block(at(other, other.surface())) += loaded;
            }
        }
        if (cycle_.even())
            for (Index row = 1; row < size(); row += unknowns) slopes(row, row) = 1;
        return slopes;
    }
    /// As if each place kept the mean of its slope all through the cycle: then no harmonic has to do with another.
    /// Cheap, and near where the loops are narrow.
    [[nodiscard]] BetteredInverse::Solver evenly(const State& state) const {
        const Index places = size() / cycle_.unknowns();
        Vector fields(places), fluxes(places);  // dH and dB for a wave
        std::vector<double> joints;
        for (std::size_t b = 0; b < sheets_.size(); ++b) {
            joints.push_back(cycle_.coefficient(state.jointSlopes[b], 0).real());
            for (Index p = sheets_[b].first; p < sheets_[b].first + sheets_[b].count(); ++p) {
                std::vector<double> share;
                for (const double slope : state.places[static_cast<std::size_t>(p)].slope)
                    share.push_back(1 / (weights_[b] + slope));
                fields(p) = cycle_.coefficient(share, 0).real();
                fluxes(p) = 1 - weights_[b] * fields(p);
            }
        }
        std::vector<Eigen::PartialPivLU<Matrix>> inverses;
        for (const int k : cycle_.kinds())
            inverses.emplace_back(harmonicSlopes(static_cast<std::size_t>(k), fields, fluxes, joints));
        const Index kinds = cycle_.unknowns() / 2;
        return [inverses, places, kinds](const Vector& rest) {
            Vector x(rest.size()), part(2 * places);
            for (Index n = 0; n < kinds; ++n) {
                for (Index p = 0; p < places; ++p) {
                    part(p) = rest(2 * (p * kinds + n));
                    part(places + p) = rest(2 * (p * kinds + n) + 1);
                }
                part = inverses[static_cast<std::size_t>(n)].solve(part).eval();
                for (Index p = 0; p < places; ++p) {
                    x(2 * (p * kinds + n)) = part(p);
                    x(2 * (p * kinds + n) + 1) = part(places + p);
                }
            }
            return x;
        };
    }
    /// Of one harmonic, real parts of all places before their imaginary parts.
    [[nodiscard]] Matrix harmonicSlopes(std::size_t k, const Vector& fields, const Vector& fluxes,
                                        const std::vector<double>& joints) const {
        const Index places = fields.size();
        Matrix real = Matrix::Zero(places, places), imaginary = real;
        for (std::size_t b = 0; b < sheets_.size(); ++b) {
            const auto& sheets = sheets_[b];
            const Index surface = sheets.first + sheets.surface();
            for (Index i = 0; i < sheets.count(); ++i) {
                const Index p = sheets.first + i;
                for (Index j = 0; j < sheets.surface(); ++j)
                    real(sheets.first + j, p) = spread(sheets, j, i) * fields(p);
                if (i < sheets.surface())
                    imaginary(p, p) = driven(sheets, i, k).imag() * fluxes(p);
                else
                    real(p, p) += fields(p);
                real(surface, p) += joints[b] * sheets.mass(i) * fluxes(p);
                const Complex loaded = around_.load[k] * sheets.block->share * sheets.mass(i) * fluxes(p);
                for (const auto& other : sheets_) {
                    real(other.first + other.surface(), p) += loaded.real();
                    imaginary(other.first + other.surface(), p) += loaded.imag();
                }
            }
        }
        Matrix whole(2 * places, 2 * places);
        whole << real, -imaginary, imaginary, real;
        return whole;
    }
    template <class Factor>
    [[nodiscard]] Matrix turned(Matrix matrix, const Factor& factorOf) const {
        cycle_.turnRows(matrix, factorOf);
        return matrix;
    }

    [[nodiscard]] Cycle cycleOf(const State& state, const Vector& x, int rounds) const {
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

    const std::vector<PlacedSheets>& sheets_;
    double angular_;
    const magnetics::CoreLoop::Memory& before_;
    const Surroundings& around_;
    OneCycle cycle_;
    std::vector<double> weights_;  // c of each alloy
};

/// Half thickness over skin depth.
double depthOf(const magnetics::CoreLoop::Block& block, double angular) {
    return std::sqrt(angular * block.eddy * block.loop.steepest() / 2);
}

}  // namespace

EddyBalance::EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples, int places)
    : core_(core), angular_(2 * std::numbers::pi * frequency), samples_(samples) {
    Index first = 0;
    for (const auto& block : core.blocks()) {
        const int count = block.eddy <= 0 ? 1 : places > 0 ? places : magnetics::placesFor(depthOf(block, angular_));
        sheets_.push_back({&block, magnetics::SheetGrid(count), first});
        first += count;
    }
}

EddyBalance::EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples)
    : EddyBalance(core, frequency, samples, 0) {}

EddyBalance::~EddyBalance() = default;
EddyBalance::EddyBalance(EddyBalance&&) noexcept = default;

Cycle EddyBalance::steadyCycle(const magnetics::CoreLoop::Memory& before, const Surroundings& around,
                               const Cycle* start) const {
    constexpr int mostSteps = 3;
    return reached(before, around, start, mostSteps);
}

/// By way of a drive between the start's and this one, where that does not settle at once.
Cycle EddyBalance::reached(const magnetics::CoreLoop::Memory& before, const Surroundings& around, const Cycle* start,
                           int steps) const {
    EddySearch search(core_, sheets_, angular_, samples_, before, around);
    Cycle cycle = search.run(start);
    if (cycle.settled || steps == 0) return cycle;
    constexpr double fromRest = 0.1;
    Surroundings between = around;
    between.drive *= start != nullptr ? std::sqrt(start->drive / driveOf(around)) : fromRest;
    const Cycle below = reached(before, between, start, steps - 1);
    return below.settled ? search.run(&below) : cycle;
}

}  // namespace analysis
