// SPDX-License-Identifier: GPL-3.0-or-later
// The scale and position of the drawing on its ground.
#pragma once

#include <QPointF>
#include <QRectF>

#include "coil/coil_build.h"

namespace cut {

/// Metres to painter units and back; y points up in the window and down on the ground.
struct Frame {
    double scale = 1;  ///< painter units a metre
    QPointF origin;    ///< where x = 0, y = 0 of the window lies
    [[nodiscard]] QPointF point(double x, double y) const { return {origin.x() + x * scale, origin.y() - y * scale}; }
    [[nodiscard]] double x(double at) const { return (at - origin.x()) / scale; }
    [[nodiscard]] double y(double at) const { return (origin.y() - at) / scale; }
    [[nodiscard]] QRectF rect(const coil::Box& box) const {
        return QRectF(point(box.x0, box.y1), point(box.x1, box.y0));
    }
    /// The same drawing `factor` times as large, with `fixed` staying where it is.
    [[nodiscard]] Frame zoomed(double factor, const QPointF& fixed) const {
        return {scale * factor, fixed + (origin - fixed) * factor};
    }
    bool operator==(const Frame&) const = default;
};

/// What the drawing reaches over: the window with a strip of iron round it, and what sticks out of it.
[[nodiscard]] coil::Box extent(const coil::CoilBuild& build) noexcept;
/// Width of the strips of iron, m.
[[nodiscard]] double ironStrip(const coil::CoilBuild& build) noexcept;
/// The largest drawing of `box` inside `area`, in its middle.
[[nodiscard]] Frame fitted(const coil::Box& box, const QRectF& area) noexcept;
/// Distance of the ruler's figures, m: 1, 2 or 5 times a power of ten, at least `least` painter units apart.
[[nodiscard]] double rulerStep(double scale, double least) noexcept;

}  // namespace cut
