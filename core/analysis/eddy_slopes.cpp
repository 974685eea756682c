// SPDX-License-Identifier: GPL-3.0-or-later
// What a search for a core's steady cycle knows of its equations' slopes.
#include "analysis/eddy_search.h"

namespace analysis {

namespace {

/// A matrix with its rows multiplied, `OneCycle::turnRows`.
template <class Factor>
Eigen::MatrixXd turned(const OneCycle& cycle, Eigen::MatrixXd matrix, const Factor& factorOf) {
    cycle.turnRows(matrix, factorOf);
    return matrix;
}

}  // namespace

/// Slopes of the rest against the waves with each place's slope at each instant: dH = a dw, dB = (1 - c a) dw,
/// a = 1 / (c + dB/dH).
EddySearch::Matrix EddySearch::slopes(const State& state) const {
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
                block(column) += turned(cycle_, flux, [&](std::size_t k) { return driven(sheets, i, k); });
            else
                block(column) += field;
            block(at(sheets, sheets.surface())) += drop;
            const double part = sheets.block->share * sheets.mass(i);
            const Matrix loaded = turned(cycle_, flux, [&](std::size_t k) { return part * around_.load[k]; });
            for (const auto& other : sheets_) block(at(other, other.surface())) += loaded;
        }
    }
    if (cycle_.even())
        for (Index row = 1; row < size(); row += unknowns) slopes(row, row) = 1;
    return slopes;
}
/// As if each place kept the mean of its slope all through the cycle: then no harmonic has to do with another.
/// Cheap, and near where the loops are narrow.
BetteredInverse::Solver EddySearch::evenly(const State& state) const {
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
EddySearch::Matrix EddySearch::harmonicSlopes(std::size_t k, const Vector& fields, const Vector& fluxes,
                                              const std::vector<double>& joints) const {
    const Index places = fields.size();
    Matrix real = Matrix::Zero(places, places), imaginary = real;
    for (std::size_t b = 0; b < sheets_.size(); ++b) {
        const auto& sheets = sheets_[b];
        const Index surface = sheets.first + sheets.surface();
        for (Index i = 0; i < sheets.count(); ++i) {
            const Index p = sheets.first + i;
            for (Index j = 0; j < sheets.surface(); ++j) real(sheets.first + j, p) = spread(sheets, j, i) * fields(p);
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
}  // namespace analysis
