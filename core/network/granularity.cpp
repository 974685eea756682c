// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/granularity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace network {

namespace {

constexpr int fewest = 40, most = 60, mostInLayer = 16;
constexpr std::size_t mostLayers = 36;  // in two pieces each

int possible(const coil::Layer& layer, int wanted) {
    if (layer.conductor.foil) return 1;
    return std::clamp(static_cast<int>(layer.turns / 2), 1, wanted);
}

/// Top of the band in which the response keeps near its value at 1 kHz: half the power below it, 6 dB above it, Hz.
double topOfBand(const Prepared& coarse, int output) {
    constexpr double middle = 1e3, least = 20e3, last = 1e6, up = 2, down = std::numbers::sqrt2;
    const double there = std::abs(coarse.solve(middle)(output));
    const auto leaves = [&](double f) {
        const double ratio = std::abs(coarse.solve(f)(output)) / there;
        return ratio > up || ratio < 1 / down;
    };
    const double half = std::pow(10, 0.1);
    double f = middle;
    while (f < last && !leaves(f * half * half)) f *= half * half;
    if (f < last && !leaves(f * half)) f *= half;
    return std::clamp(f, least, last);
}

/// Rows that take the second half's current less the first half's of each layer in two pieces; layers x pieces.
Matrix halvesOf(const Pieces& pieces, Eigen::Index count) {
    Matrix halves = Matrix::Zero(static_cast<Eigen::Index>(pieces.size()), count);
    Eigen::Index piece = 0;
    for (std::size_t k = 0; k < pieces.size(); piece += pieces[k], ++k) {
        if (pieces[k] != 2) continue;
        halves(static_cast<Eigen::Index>(k), piece) = -1;
        halves(static_cast<Eigen::Index>(k), piece + 1) = 1;
    }
    return halves;
}

/// Pieces in proportion to the cube root of the shares, `per` of them for a share of one.
Pieces spread(const coil::CoilBuild& build, const Vector& shares, double per) {
    Pieces pieces;
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const double wanted = std::ceil(per * std::cbrt(shares(static_cast<Eigen::Index>(k))));
        pieces.push_back(possible(build.layers[k], static_cast<int>(std::clamp<double>(wanted, 1, mostInLayer))));
    }
    return pieces;
}

int sum(const Pieces& pieces) {
    int all = 0;
    for (const int n : pieces) all += n;
    return all;
}

double left(const Pieces& pieces, const Vector& shares) {
    double all = 0;
    for (std::size_t k = 0; k < pieces.size(); ++k)
        all += 4 * shares(static_cast<Eigen::Index>(k)) / (pieces[k] * pieces[k]);
    return all;
}

}  // namespace

Pieces coarsePieces(const coil::CoilBuild& build) {
    const int wanted = build.layers.size() > mostLayers ? 1 : 2;
    Pieces pieces;
    for (const auto& layer : build.layers) pieces.push_back(possible(layer, wanted));
    return pieces;
}

Vector neglected(const Prepared& coarse, const Pieces& pieces) {
    const auto& c = coarse.circuit();
    const auto layers = static_cast<Eigen::Index>(pieces.size());
    Vector shares = Vector::Zero(layers);
    const int driven = c.portOfRole(design::Role::Drive), observed = c.portOfRole(design::Role::Observe);
    if (driven < 0 || observed < 0 || *std::max_element(pieces.begin(), pieces.end()) == 1) return shares;
    const Matrix halves = halvesOf(pieces, c.turns.size());
    const Matrix dipoles = halves * c.leakage * halves.transpose() / 4;
    const int output = coarse.layout().voltage(driven, observed);
    const double top = topOfBand(coarse, output);
    for (const double f : {top, top / 2, top / 4}) {
        const auto at = coarse.snapshot(f);
        const ComplexMatrix slopes = (halves * coarse.basis().topRows(c.turns.size())).cast<Complex>() * at.state;
        const ComplexMatrix flux = dipoles.cast<Complex>() * slopes;
        const double response = std::abs(outputs(c, coarse.reading(), at.state, f)(output));
        if (response == 0) continue;
        const double scale = 2 * std::numbers::pi * f * std::abs(throughImpedance(c, observed, f)) / response / 2;
        const Vector both = slopes.col(driven).cwiseProduct(flux.col(observed)).cwiseAbs() +
                            slopes.col(observed).cwiseProduct(flux.col(driven)).cwiseAbs();
        shares = shares.cwiseMax(scale * both);
    }
    return shares;
}

Pieces piecesFor(const coil::CoilBuild& build, const Vector& shares) {
    const double enough = 0.03 * std::numbers::ln10 / 20;
    // A layer without any share still counts when there are branches to spare.
    const Vector counted = shares.array() + std::max(1e-12, 1e-3 * shares.maxCoeff());
    constexpr double finer = 1.02;
    double per = 1 / std::cbrt(counted.maxCoeff());
    Pieces pieces = spread(build, counted, per);
    for (;;) {
        const bool coarse = left(pieces, shares) > enough || sum(pieces) < fewest;
        per *= finer;
        const Pieces next = spread(build, counted, per);
        const bool saturated = *std::min_element(next.begin(), next.end()) >= mostInLayer ||
                               per > 2 * mostInLayer / std::cbrt(counted.minCoeff());
        if (!coarse || saturated || sum(next) > most) return pieces;
        pieces = next;
    }
}

}  // namespace network
