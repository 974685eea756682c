// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/hatch.h"

#include <QVector>
#include <algorithm>
#include <cmath>

#include "bench/theme.h"

namespace cut {

namespace {

double firstMultiple(double from, double spacing) {
    return std::ceil(from / spacing) * spacing;
}

/// Lines x + y = c (rising to the right on screen) or x - y = c.
void diagonals(QVector<QLineF>& lines, const QRectF& a, bool rising, double spacing) {
    const double step = spacing * std::sqrt(2.0);
    const double low = rising ? a.left() + a.top() : a.left() - a.bottom();
    const double high = rising ? a.right() + a.bottom() : a.right() - a.top();
    for (double c = firstMultiple(low, step); c <= high; c += step) {
        const double x0 = std::max(a.left(), rising ? c - a.bottom() : c + a.top());
        const double x1 = std::min(a.right(), rising ? c - a.top() : c + a.bottom());
        if (x1 > x0) lines.append({x0, rising ? c - x0 : x0 - c, x1, rising ? c - x1 : x1 - c});
    }
}

void parallels(QVector<QLineF>& lines, const QRectF& a, bool upright, double spacing) {
    if (upright)
        for (double x = firstMultiple(a.left(), spacing); x <= a.right(); x += spacing)
            lines.append({x, a.top(), x, a.bottom()});
    else
        for (double y = firstMultiple(a.top(), spacing); y <= a.bottom(); y += spacing)
            lines.append({a.left(), y, a.right(), y});
}

void dots(QPainter& painter, const QRectF& a, double spacing) {
    for (double y = firstMultiple(a.top(), spacing); y <= a.bottom(); y += spacing)
        for (double x = firstMultiple(a.left(), spacing); x <= a.right(); x += spacing)
            painter.drawLine(QLineF(x - 0.5, y, x + 0.5, y));
}

}  // namespace

void hatch(QPainter& painter, const QRectF& area, Qt::BrushStyle style, double spacing) {
    if (area.width() <= 0 || area.height() <= 0 || spacing <= 0) return;
    const bool diagonal = style == Qt::BDiagPattern || style == Qt::FDiagPattern || style == Qt::DiagCrossPattern;
    QVector<QLineF> lines;
    if (style == Qt::BDiagPattern || style == Qt::DiagCrossPattern) diagonals(lines, area, true, spacing);
    if (style == Qt::FDiagPattern || style == Qt::DiagCrossPattern) diagonals(lines, area, false, spacing);
    if (style == Qt::VerPattern || style == Qt::CrossPattern) parallels(lines, area, true, spacing);
    if (style == Qt::HorPattern || style == Qt::CrossPattern) parallels(lines, area, false, spacing);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, diagonal);
    if (!lines.isEmpty())
        painter.drawLines(lines);
    else
        dots(painter, area, spacing);
    painter.restore();
}

QColor tint(const QColor& hue, const QColor& base) {
    return bench::mixed(base, hue, 0.22);
}
QColor hatchColour(const QColor& hue, const QColor& base) {
    return bench::mixed(base, hue, 0.55);
}

void paintWindingMark(QPainter& painter, const QRectF& area, const QColor& hue, const QColor& base,
                      Qt::BrushStyle style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.fillRect(area, tint(hue, base));
    painter.setPen(QPen(hue, 0));
    hatch(painter, area, style, 4);
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(area);
    painter.restore();
}

void paintEarth(QPainter& painter, const QPointF& top, double size) {
    const double stem = size * 0.4, gap = size * 0.22;
    painter.drawLine(top, top + QPointF(0, stem));
    for (int i = 0; i < 3; ++i) {
        const double half = size * (0.5 - 0.17 * i), y = top.y() + stem + gap * i;
        painter.drawLine(QPointF(top.x() - half, y), QPointF(top.x() + half, y));
    }
}

void paintBrokenSign(QPainter& painter, const QPointF& centre, double radius) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(centre, radius, radius);
    const double r = radius * 0.7;
    painter.drawLine(centre + QPointF(-r, r), centre + QPointF(r, -r));
    painter.restore();
}

}  // namespace cut
