// SPDX-License-Identifier: GPL-3.0-or-later
// How many plots there are and what each shows: what the bench remembers of them.
#pragma once

#include <array>
#include <vector>

#include "plots/plot.h"

namespace plots {

inline constexpr std::array<int, 5> plotCounts{1, 2, 4, 6, 8};

struct Arrangement {
    int count = 4;
    /// A view for each of the greatest count: a plot that went and comes again shows what it did.
    std::vector<View> views{
        {"response", {}, "deg"},      {"impedance", {}, {}}, {"headroom", {}, {}}, {"response", "group_delay_s", {}},
        {"distortion_level", {}, {}}, {"balance", {}, {}},   {"noise", {}, {}},    {"step", {}, {}}};
    bool operator==(const Arrangement&) const = default;
};

/// One of `plotCounts`, and as many views as the greatest; what is amiss is as at first.
[[nodiscard]] Arrangement sound(Arrangement arrangement);

/// The whole trace in one plot: what it shows at first, in levels with their phase on the right.
[[nodiscard]] View wholeView(const analysis::Trace& trace);

}  // namespace plots
