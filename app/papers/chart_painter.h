// SPDX-License-Identifier: GPL-3.0-or-later
// A chart over frequency, as vectors.
#pragma once

#include "papers/paper.h"
#include "shop/datasheet.h"

namespace papers {

/// A value axis: its ends and the distance of its ticks (logarithmic: decades).
struct Span {
    double low = 0, high = 1, step = 1;
    bool logarithmic = false;
    [[nodiscard]] double share(double value) const;  ///< 0 at the low end, 1 at the high end
};

/// Round ends for the lines of one side of a chart, as seen from `fromHz` to `toHz`.
[[nodiscard]] Span spanOf(const shop::Chart& chart, bool right, double fromHz, double toHz);

/// Draws title, legend, axes, mask and lines inside `rect`.
void paintChart(Paper& paper, const QRectF& rect, const shop::Chart& chart, const shop::Words& say);

}  // namespace papers
