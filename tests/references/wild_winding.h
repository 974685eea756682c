// SPDX-License-Identifier: GPL-3.0-or-later
// Wild windings by chance: discs let fall onto a coil by a guide that goes to and fro and does not lead exactly.
#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace wild {

struct Wire {
    double x = 0, y = 0;  ///< from the coil's inner face, from its lower end; in wire diameters
};

/// `count` wires of diameter 1 between walls `width` apart, in winding sequence. The guide moves one diameter a turn
/// and leads to `scatter` diameters (standard deviation); a wire falls to what it meets and rolls into the next hollow.
inline std::vector<Wire> wound(int count, double width, double scatter, unsigned seed) {
    std::mt19937 draw(seed);
    std::normal_distribution<double> astray(0, scatter);
    std::vector<Wire> all;
    const double stroke = width - 1;
    const auto rest = [&](double y) {
        double x = 0.5;
        for (const auto& w : all) {
            const double across = std::abs(w.y - y);
            if (across < 1) x = std::max(x, w.x + std::sqrt(1 - across * across));
        }
        return x;
    };
    for (int k = 0; k < count; ++k) {
        const double run = std::fmod(double(k), 2 * stroke);
        double y = 0.5 + (run < stroke ? run : 2 * stroke - run) + astray(draw);
        y = std::clamp(y, 0.5, width - 0.5);
        double x = rest(y);
        for (double step = 0.1; step > 1e-3;) {  // downhill
            const double low = std::max(0.5, y - step), high = std::min(width - 0.5, y + step);
            const double xl = rest(low), xh = rest(high);
            if (std::min(xl, xh) < x - 1e-9) {
                y = xl < xh ? low : high;
                x = std::min(xl, xh);
            } else {
                step /= 2;
            }
        }
        all.push_back({x, y});
    }
    return all;
}

}  // namespace wild
