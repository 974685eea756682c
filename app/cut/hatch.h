// SPDX-License-Identifier: GPL-3.0-or-later
// Hatching as lines, so that it stays a vector on paper and keeps its spacing at any zoom; and small signs.
#pragma once

#include <QColor>
#include <QPainter>
#include <QRectF>

namespace cut {

/// Fills `area` with parallel lines `spacing` apart in one of Qt's hatch styles (a dense style gives dots). Lines of
/// neighbouring areas meet. The pen is the painter's.
void hatch(QPainter& painter, const QRectF& area, Qt::BrushStyle style, double spacing);

/// Tint of a winding's ground, and the colour of its hatch on it.
[[nodiscard]] QColor tint(const QColor& hue, const QColor& base);
[[nodiscard]] QColor hatchColour(const QColor& hue, const QColor& base);

/// The mark of a winding, as on chips and in lists: ground, hatch and border.
void paintWindingMark(QPainter& painter, const QRectF& area, const QColor& hue, const QColor& base,
                      Qt::BrushStyle style);

/// Earth after IEC 60617, hanging from `top`, `size` wide.
void paintEarth(QPainter& painter, const QPointF& top, double size);

/// Fault sign: an open ring with a bar, as everywhere on the bench.
void paintBrokenSign(QPainter& painter, const QPointF& centre, double radius);

}  // namespace cut
