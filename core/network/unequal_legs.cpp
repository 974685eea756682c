// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/unequal_legs.h"

#include <cmath>
#include <numbers>

#include "magnetics/permeability.h"

namespace network {
namespace {

constexpr double highest = 1e6;  // Hz

/// Terms of the series drawn together: conductance of the loops in units of 2 t / (pi^2 Lambda_0), and the inductance
/// that keeps their second order, in units of Lambda_0 / 2.
struct Group {
    double conductance = 0;
    double inductance = 0;
};

std::vector<Group> groups(double t) {
    constexpr int single = 8;
    constexpr double growth = 1.15;
    std::vector<Group> all;
    const double enough = std::sqrt(20 * 2 * std::numbers::pi * highest * t) / std::numbers::pi;
    int from = 1;
    while (from <= single || from < enough) {
        const int to = from <= single ? from : static_cast<int>(growth * from);
        double first = 0, second = 0;
        for (int k = from; k <= to; ++k) {
            first += 1.0 / k / k;
            second += 1.0 / k / k / k / k;
        }
        all.push_back({first, second / (first * first)});
        from = to + 1;
    }
    // What is left is a resistance: the sum of 1/k^2 from there on.
    double rest = std::numbers::pi * std::numbers::pi / 6;
    for (int k = 1; k < from; ++k) rest -= 1.0 / k / k;
    all.push_back({rest, 1.0 / (3 * std::pow(from - 0.5, 3)) / (rest * rest)});
    return all;
}

}  // namespace

SecondFlux secondFlux(const magnetics::CoreModel& outerLoop, const Vector& oneSided) {
    using std::numbers::pi;
    SecondFlux result;
    const Eigen::Index branches = oneSided.size();
    result.inductance = Matrix::Zero(branches, branches);
    std::vector<double> resistance;
    std::vector<Matrix> blocks;
    std::vector<double> shared;  // flux path of each block, H
    const double scale = magnetics::mu0 * outerLoop.area / outerLoop.pathLength;
    for (const auto& block : outerLoop.blocks) {
        const double closed = scale * block.share * block.initialPermeability;
        const double gapped = closed / (1 + block.initialPermeability * outerLoop.gap / outerLoop.pathLength);
        const double t =
            magnetics::mu0 * block.initialPermeability * block.thickness * block.thickness / (4 * block.resistivity);
        const auto terms = t > 0 && std::isfinite(t) ? groups(t) : std::vector<Group>{};
        Matrix own =
            Matrix::Constant(static_cast<Eigen::Index>(terms.size()), static_cast<Eigen::Index>(terms.size()), gapped);
        for (std::size_t k = 0; k < terms.size(); ++k) {
            own(static_cast<Eigen::Index>(k), static_cast<Eigen::Index>(k)) += closed / 2 * terms[k].inductance;
            resistance.push_back(pi * pi * closed / (2 * t) / terms[k].conductance);
        }
        result.inductance += gapped * oneSided * oneSided.transpose();
        shared.push_back(gapped);
        blocks.push_back(std::move(own));
    }
    const auto count = static_cast<Eigen::Index>(resistance.size());
    auto& loops = result.loops;
    loops.ends.assign(resistance.size(), {});
    loops.resistance = Eigen::Map<const Vector>(resistance.data(), count);
    loops.bareDiameter = Vector::Zero(count);
    loops.inductance = Matrix::Zero(count, count);
    loops.mutual = Matrix::Zero(branches, count);
    Eigen::Index at = 0;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        const Eigen::Index size = blocks[b].rows();
        loops.inductance.block(at, at, size, size) = blocks[b];
        loops.mutual.middleCols(at, size) = shared[b] * oneSided * Matrix::Ones(1, size);
        at += size;
    }
    return result;
}

}  // namespace network
