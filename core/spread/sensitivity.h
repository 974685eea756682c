// SPDX-License-Identifier: GPL-3.0-or-later
// What one varying number alone does to each figure.
#pragma once

#include "spread/run.h"

namespace spread {

/// Of one column to one varying number.
struct Slope {
    std::size_t varying = 0;
    double derivative = 0;  ///< column's unit over the number's unit; not a number where the figure does not occur
    double effect = 0;      ///< for one standard deviation of the number: derivative times that
};
/// A column each: by size of effect, greatest first. Central differences over one standard deviation to either side
/// (turns: a step of a turn). `progress` is told how many numbers are done. Stopped, it is empty.
[[nodiscard]] std::vector<std::vector<Slope>> sensitivities(const Study& study, const std::stop_token& stop = {},
                                                            const Study::Progress& progress = {}, unsigned threads = 0);

}  // namespace spread
