// SPDX-License-Identifier: GPL-3.0-or-later
// Ampere-turns and layer voltages as ladders of ticks on the borders between sections.
#pragma once

#include <QStringList>
#include <vector>

#include "cut/canvas.h"

namespace cut {

/// What stands at the border between two neighbours of one chamber that carry a voltage: sections or shields.
struct Border {
    QString inside, outside;       ///< their names, as seen from the core
    double x = 0, y0 = 0, y1 = 0;  ///< as drawn, m
    double ampereTurns = 0;        ///< of all layers from the core to here, A for 1 A into the driven port
    double insideVolts = 0;        ///< mean of the layer that faces the border, V for 1 V at the driven port
    double outsideVolts = 0;
};
[[nodiscard]] std::vector<Border> bordersOf(const coil::CoilBuild& build, const design::Design& design,
                                            const std::vector<Shape>& shapes, const analysis::CoilState& state);

/// The ladders of one border, led out to the right of the drawing: a row with its numbers.
struct LadderRow {
    int border = 0;
    QPointF dot;  ///< on the border
    QRectF row;   ///< of ladders and numbers
    QString amperes, volts;
};
/// All rows, and what they have in common. Positions in painter units from a row's left edge.
struct Ladders {
    std::vector<LadderRow> rows;
    double ampereStep = 1, voltStep = 1;  ///< from tick to tick
    double ampereUnit = 0, voltUnit = 0;  ///< painter units for one ampere, one volt; 0: not shown
    double ampereText = 0, voltRail = 0, voltText = 0, width = 0;
};
/// Ladders of the kinds that the canvas's options ask for, a row a border from the core outward, at the right edge of
/// the canvas's area. Where there is no height for all, those with the least to tell are left out.
[[nodiscard]] Ladders laddersFor(const Canvas& canvas, const std::vector<Border>& borders);
void paintLadders(const Canvas& canvas, const std::vector<Border>& borders, const Ladders& ladders);

/// What the ladders show, a line a kind: for above the drawing.
[[nodiscard]] QStringList ladderLegend(const PaintOptions& options);
/// What a border's numbers mean, for a tip.
[[nodiscard]] QString borderTip(const Border& border, const analysis::CoilState& state);

}  // namespace cut
