// SPDX-License-Identifier: GPL-3.0-or-later
// How much rejection can be known at all.
#pragma once

#include <string_view>

#include "units/figure.h"

namespace analysis {

/// Above this lead-outs and foil edges rule, which no design says: shown as "over 80 dB", and no promise rests on more
/// (common practice, no source).
inline constexpr double mostRejection = 80;  // dB

/// Whether a figure of this name is a rejection.
[[nodiscard]] inline bool isRejection(std::string_view figure) noexcept {
    return figure.starts_with("rejection") || figure.starts_with("output_balance");
}

/// Whether the figure says only that there is more than its value.
[[nodiscard]] inline bool isOverMost(const units::Figure& figure) noexcept {
    return isRejection(figure.name) && figure.value >= mostRejection;
}

}  // namespace analysis
