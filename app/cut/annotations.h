// SPDX-License-Identifier: GPL-3.0-or-later
// Writing in the drawing: rulers, labels, and what does not fit, in words.
#pragma once

#include <QStringList>

#include "cut/canvas.h"
#include "cut/labels.h"

namespace cut {

/// Widths that the rulers and the sentences about the fit take from the target.
struct Margins {
    double left = 0, top = 0, right = 0, bottom = 0;
};
[[nodiscard]] Margins marginsFor(const QFontMetricsF& metrics, bool rulers, int sentences);

/// What does not fit, a sentence a problem; empty if all fits.
[[nodiscard]] QStringList fitSentences(const coil::CoilBuild& build);
/// At the top of `target`: sentences with the sign for broken, then remarks, muted.
void paintFitSentences(const Canvas& canvas, const QRectF& target, const QStringList& sentences,
                       const QStringList& remarks);

/// Labels of all items in `shapes` but insulation, placed for the canvas's frame and area.
[[nodiscard]] std::vector<Label> labelsFor(const Canvas& canvas, const coil::CoilBuild& build,
                                           const std::vector<Shape>& shapes);
void paintLabels(const Canvas& canvas, const std::vector<Label>& labels, const std::vector<Shape>& shapes);

/// Warning hatch over what is beyond the room, with the amount.
void paintOvershoots(const Canvas& canvas, const coil::CoilBuild& build);

/// Millimetres, or inches, along the left and bottom edge of `target`, from the window's corner.
void paintRulers(const Canvas& canvas, const QRectF& target);

}  // namespace cut
