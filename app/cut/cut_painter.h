// SPDX-License-Identifier: GPL-3.0-or-later
// The cut through the window, to scale, painted onto anything.
#pragma once

#include "analysis/answer.h"
#include "cut/canvas.h"

namespace cut {

/// The frame that shows the whole drawing in `target`, with room for rulers, led-out labels and sentences.
[[nodiscard]] Frame fittedFrame(const QRectF& target, const coil::CoilBuild& build, const design::Design& design,
                                const PaintOptions& options);

/// Where the drawing itself may appear within `target`.
[[nodiscard]] QRectF drawingArea(const QRectF& target, const coil::CoilBuild& build, const PaintOptions& options);

/// Paints one window of a shell core, or the whole window of a two-leg core, from the answer's coil build. The design
/// gives names and hues. Nothing is painted where there is no build.
void paintCut(QPainter& painter, const QRectF& target, const analysis::Answer& answer, const design::Design& design,
              const PaintOptions& options);

}  // namespace cut
