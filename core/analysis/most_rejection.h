// SPDX-License-Identifier: GPL-3.0-or-later
// How much rejection and cancelling can be known at all.
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

/// No two legs and no field are so equal that more than this of a hum cancels: shown as "over 40 dB" (common practice,
/// no source).
inline constexpr double mostHumCancelled = 40;  // dB

/// Whether the figure says only that there is more than its value.
[[nodiscard]] inline bool isOverMost(const units::Figure& figure) noexcept {
    if (figure.name.starts_with("hum_cancelled")) return figure.value >= mostHumCancelled;
    return isRejection(figure.name) && figure.value >= mostRejection;
}

}  // namespace analysis
