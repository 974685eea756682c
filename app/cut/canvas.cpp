// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/canvas.h"

#include <cmath>

namespace cut {

int Canvas::windingIndex(const std::string& name) const {
    for (std::size_t i = 0; i < design.windings.size(); ++i)
        if (design.windings[i].name == name) return static_cast<int>(i);
    return 0;
}

QPen Canvas::pen(const QColor& colour, double width) const {
    QPen pen(colour, options.hairline > 0 ? options.hairline * width : width);
    if (options.hairline <= 0 && width <= 1) pen.setWidth(0);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    return pen;
}

QRectF Canvas::rect(const coil::Box& box) const {
    QRectF r = frame.rect(box);
    if (options.snap)
        r.setCoords(std::round(r.left()), std::round(r.top()), std::round(r.right()), std::round(r.bottom()));
    const double least = options.hairline > 0 ? options.hairline : 1;
    if (r.width() < least) r.setWidth(least);
    if (r.height() < least) r.setHeight(least);
    return r;
}

void Canvas::outline(const QRectF& rect, const QColor& colour, double width) const {
    painter.setPen(pen(colour, width));
    painter.setBrush(Qt::NoBrush);
    // Fully zoomed in, edges may lie millions of units away: only what is near is drawn.
    const QRectF near = rect & area.adjusted(-8, -8, 8, 8);
    if (near.isValid()) painter.drawRect(near);
}

}  // namespace cut
