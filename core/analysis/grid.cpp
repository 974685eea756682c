// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "analysis/answer.h"

namespace analysis {

std::vector<double> logarithmicGrid(double from, double to, int points) {
    std::vector<double> grid;
    grid.reserve(static_cast<std::size_t>(points));
    for (int k = 0; k < points; ++k)
        grid.push_back(k == 0 ? from : k == points - 1 ? to : from * std::exp(std::log(to / from) * k / (points - 1)));
    return grid;
}

}  // namespace analysis
