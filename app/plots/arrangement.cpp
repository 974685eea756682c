// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/arrangement.h"

#include <algorithm>

namespace plots {

Arrangement sound(Arrangement arrangement) {
    const Arrangement first;
    if (std::find(plotCounts.begin(), plotCounts.end(), arrangement.count) == plotCounts.end())
        arrangement.count = first.count;
    const std::size_t known = std::min(arrangement.views.size(), first.views.size());
    arrangement.views.resize(known);
    arrangement.views.insert(arrangement.views.end(), first.views.begin() + static_cast<std::ptrdiff_t>(known),
                             first.views.end());
    return arrangement;
}

View wholeView(const analysis::Trace& trace) {
    const bool levels = !trace.curves.empty() && trace.curves.front().kind == units::Kind::Decibel;
    const bool phase = std::any_of(trace.curves.begin(), trace.curves.end(),
                                   [](const analysis::Curve& curve) { return curve.unit == "deg"; });
    return {trace.name, {}, levels && phase ? "deg" : ""};
}

}  // namespace plots
