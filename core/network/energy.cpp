// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/energy.h"

#include <algorithm>
#include <array>

namespace network {

namespace {

struct Weight {
    int node;
    double share;
};
using Weights = std::array<Weight, 4>;  // two nodes of each body; those of b with minus sign

void weightsAt(const VoltageLine& line, double y, double sign, Weight* out) {
    if (line.node.size() == 1) {
        out[0] = {line.node[0], sign};
        out[1] = {line.node[0], 0};
        return;
    }
    const auto above = std::upper_bound(line.y.begin() + 1, line.y.end() - 1, y);
    const auto k = static_cast<std::size_t>(above - line.y.begin());
    const double t = std::clamp((y - line.y[k - 1]) / (line.y[k] - line.y[k - 1]), 0.0, 1.0);
    out[0] = {line.node[k - 1], sign * (1 - t)};
    out[1] = {line.node[k], sign * t};
}

void addSquare(ComplexMatrix& c, const Weights& w, Complex value) {
    for (const auto& p : w)
        for (const auto& q : w)
            if (p.node != earth && q.node != earth) c(p.node, q.node) += value * p.share * q.share;
}

}  // namespace

void addFacing(ComplexMatrix& capacitance, const VoltageLine& a, const VoltageLine& b, double y0, double y1,
               Complex total) {
    const auto at = [&](double y) {
        Weights w;
        weightsAt(a, y, 1, w.data());
        weightsAt(b, y, -1, w.data() + 2);
        return w;
    };
    if (!(y1 > y0)) return addSquare(capacitance, at(y0), total);
    std::vector<double> cuts{y0, y1};
    for (const auto* line : {&a, &b})
        for (const double y : line->y)
            if (y > y0 && y < y1) cuts.push_back(y);
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t k = 1; k < cuts.size(); ++k) {
        const double from = cuts[k - 1], width = cuts[k] - from;
        if (width < 1e-12 * (y1 - y0)) continue;
        const Complex part = total * (width / (y1 - y0));
        // Two-point Gauss is exact for the square of a straight line; its points lie inside the piece, away from the
        // kinks.
        constexpr double half = 0.28867513459481288225;
        addSquare(capacitance, at(from + width * (0.5 - half)), part / 2.0);
        addSquare(capacitance, at(from + width * (0.5 + half)), part / 2.0);
    }
}

void addCapacitor(ComplexMatrix& capacitance, int from, int to, Complex value) {
    addSquare(capacitance, {{{from, 1}, {to, -1}, {from, 0}, {to, 0}}}, value);
}

}  // namespace network
