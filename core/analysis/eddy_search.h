// SPDX-License-Identifier: GPL-3.0-or-later
// The search behind `EddyBalance`; for the sources of both.
#pragma once

#include "analysis/balance_search.h"
#include "analysis/eddy_balance.h"
#include "analysis/followed_loop.h"
#include "magnetics/sheet_grid.h"

namespace analysis {

/// The sheets of one alloy with the places at which their field is sought.
struct PlacedSheets {
    const magnetics::CoreLoop::Block* block;
    magnetics::SheetGrid grid;
    Eigen::Index first;  ///< of its places among those of all
    [[nodiscard]] Eigen::Index count() const { return static_cast<Eigen::Index>(grid.places.size()); }
    [[nodiscard]] Eigen::Index surface() const { return count() - 1; }
    [[nodiscard]] double mass(Eigen::Index place) const { return grid.weights[static_cast<std::size_t>(place)]; }
};

/// A search for one steady cycle. Unknown are the waves at every place of every alloy's sheets, in a row. All that it
/// is made with must outlive it.
class EddySearch {
public:
    EddySearch(const magnetics::CoreLoop& core, const std::vector<PlacedSheets>& sheets, double angular, int samples,
               const magnetics::CoreLoop::Memory& before, const Surroundings& around);
    [[nodiscard]] Cycle run(const Cycle* start) const;

private:
    using Complex = std::complex<double>;
    using Index = Eigen::Index;
    using Matrix = Eigen::MatrixXd;
    using Vector = Eigen::VectorXd;

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
    [[nodiscard]] Vector rest() const;
    [[nodiscard]] LoopStart loopOf(std::size_t b) const {
        return {sheets_[b].block->loop, before_.blocks[b], before_.fields[b], weights_[b]};
    }

    [[nodiscard]] State stateAt(const Vector& x) const;
    void takeRest(State& state, const std::vector<std::vector<Complex>>& surfaces) const;
    /// Coefficients of the equation within a sheet, in A/m of the place's own field.
    [[nodiscard]] static double spread(const PlacedSheets& sheets, Index i, Index j) {
        return sheets.grid.stiffness(i, j) / sheets.grid.stiffness(i, i);
    }
    [[nodiscard]] Complex driven(const PlacedSheets& sheets, Index i, std::size_t k) const {
        return {0, double(k) * angular_ * sheets.block->eddy * sheets.mass(i) / sheets.grid.stiffness(i, i)};
    }

    [[nodiscard]] Matrix slopes(const State& state) const;
    [[nodiscard]] BetteredInverse::Solver evenly(const State& state) const;
    [[nodiscard]] Matrix harmonicSlopes(std::size_t k, const Vector& fields, const Vector& fluxes,
                                        const std::vector<double>& joints) const;
    [[nodiscard]] Cycle cycleOf(const State& state, const Vector& x, int rounds) const;

    const std::vector<PlacedSheets>& sheets_;
    double angular_;
    const magnetics::CoreLoop::Memory& before_;
    const Surroundings& around_;
    OneCycle cycle_;
    std::vector<double> weights_;  // c of each alloy
};

}  // namespace analysis
