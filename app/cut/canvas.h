// SPDX-License-Identifier: GPL-3.0-or-later
// What every part of the drawing is painted with.
#pragma once

#include <QFont>
#include <QPainter>
#include <memory>
#include <optional>

#include "analysis/coil_state.h"
#include "bench/theme.h"
#include "cut/frame.h"
#include "cut/section_geometry.h"

namespace cut {

/// How the cut is painted. The defaults suit a screen; papers set `dark` false, `snap` false and a hairline, and scale
/// the painter so that a unit is 1/96 inch.
struct PaintOptions {
    bool dark = false;
    bool snap = true;     ///< edges on whole units
    double hairline = 0;  ///< pen width; 0: one pixel of the device
    bool rulers = true;
    bool inch = false;  ///< rulers in inch
    bool labels = true;
    bool ends = true;  ///< marks of starts and finishes
    QFont font;
    std::optional<Frame> frame;  ///< empty: the whole drawing, as large as it fits
    document::Selected selected;
    std::shared_ptr<const analysis::CoilState> state;  ///< null: no ladders
    bool ampereTurns = false, layerVolts = false;      ///< which ladders
};

/// A painter with the drawing's frame, area, colours and pens.
struct Canvas {
    QPainter& painter;
    Frame frame;
    QRectF area;  ///< where the drawing may appear
    const PaintOptions& options;
    const design::Design& design;

    [[nodiscard]] QColor colour(bench::Token token) const { return bench::colour(token, options.dark); }
    [[nodiscard]] QColor base() const { return colour(bench::Token::Base); }
    [[nodiscard]] int windingIndex(const std::string& name) const;
    [[nodiscard]] QColor hue(const std::string& winding) const {
        return bench::windingColour(windingIndex(winding), options.dark);
    }
    [[nodiscard]] QPen pen(const QColor& colour, double width = 1) const;
    /// A box on the ground, edges on whole units if wanted, at least one unit wide and high.
    [[nodiscard]] QRectF rect(const coil::Box& box) const;
    /// The part of a rectangle that can be seen.
    [[nodiscard]] QRectF seen(const QRectF& rect) const { return rect & area; }
    /// A frame of one line without filling.
    void outline(const QRectF& rect, const QColor& colour, double width = 1) const;
};

}  // namespace cut
