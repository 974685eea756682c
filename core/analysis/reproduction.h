// SPDX-License-Identifier: GPL-3.0-or-later
// Whether figures that were stored come out the same again.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// A figure that came out otherwise than it was stored.
struct Moved {
    std::string name, hookUp, unit;
    double before = 0;  ///< not a number: there was none
    double now = 0;     ///< not a number: there is none
    /// Relative to the stored value; a figure of zero is compared as it is.
    [[nodiscard]] double share() const;
};

/// Figures that differ by more than `tolerance` (relative), or that only one side has, in the order they were stored.
[[nodiscard]] std::vector<Moved> moved(const std::vector<units::Figure>& stored, const std::vector<units::Figure>& now,
                                       double tolerance = 1e-9);
/// "leakage_10kHz.P.S (normal): 1.19 mH → 1.21 mH (+1.7 %)"
[[nodiscard]] std::string sentence(const Moved& moved);

}  // namespace analysis
