// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/section_painter.h"

#include <algorithm>
#include <cmath>

#include "cut/hatch.h"

namespace cut {

using bench::Token;

namespace {

/// Axial room in each turn of a layer: of wires that sections of the same hand lay before this one's, and of all, m.
struct HandRoom {
    double before = 0, all = 0;
};
HandRoom handRoom(const coil::CoilBuild& build, const coil::Layer& layer) {
    HandRoom room;
    for (const auto& other : build.layers) {
        if (other.item.place != layer.item.place || other.number != layer.number || other.random) continue;
        const bool together = other.begins == layer.begins && other.tapAfter == layer.tapAfter &&
                              std::abs(other.pitch - layer.pitch) < 1e-12 &&
                              std::abs(other.box.x0 - layer.box.x0) < 1e-9 &&
                              std::abs(other.box.y0 - layer.box.y0) < 1e-9;
        if (!together) continue;
        const double wide = other.conductor.overall * other.conductor.strands;
        room.all += wide;
        if (other.item < layer.item) room.before += wide;
    }
    return room;
}

void paintWire(const Canvas& canvas, const QPointF& centre, double overall, double bare, const QColor& hue) {
    auto& p = canvas.painter;
    p.setPen(canvas.pen(hue));
    p.setBrush(tint(hue, canvas.base()));
    p.drawEllipse(centre, overall / 2, overall / 2);
    if (overall - bare < 2) return;
    p.setPen(Qt::NoPen);
    p.setBrush(hatchColour(hue, canvas.base()));
    p.drawEllipse(centre, bare / 2, bare / 2);
}

/// The wires of a layer that can be seen, one circle a strand.
void paintWires(const Canvas& canvas, const coil::CoilBuild& build, const coil::Layer& layer) {
    const auto& c = layer.conductor;
    const auto box = drawn(build, layer.leg, layer.box);
    const double overall = c.overall * canvas.frame.scale, bare = c.bare * canvas.frame.scale;
    const int turns = static_cast<int>(std::ceil(layer.turns - 1e-9));
    const bool up = layer.begins == design::End::Low;
    const double top = canvas.frame.y(canvas.area.top() - overall),
                 bottom = canvas.frame.y(canvas.area.bottom() + overall);
    const QColor hue = canvas.hue(layer.winding);
    // The hand lies in the middle of its pitch.
    const auto room = handRoom(build, layer);
    const double first = std::max(0.0, layer.pitch - room.all) / 2 + room.before + c.overall / 2;
    for (int turn = 0; turn < turns; ++turn)
        for (int strand = 0; strand < c.strands; ++strand) {
            const double along = turn * layer.pitch + first + strand * c.overall;
            const double y = up ? box.y0 + along : box.y1 - along;
            if (y < bottom || y > top) continue;
            paintWire(canvas, canvas.frame.point(box.middle(), y), overall, bare, hue);
        }
}

void paintLayers(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape, bool shared) {
    auto& p = canvas.painter;
    const QColor hue = canvas.hue(shape.winding);
    for (const auto& layer : build.layers) {
        if (layer.item != shape.item) continue;
        const QRectF r = canvas.rect(drawn(build, layer.leg, layer.box));
        const QRectF seen = canvas.seen(r);
        if (seen.isEmpty()) continue;
        const bool wires =
            !layer.conductor.foil && !layer.random && layer.conductor.overall * canvas.frame.scale >= wireFrom;
        if (wires) {
            p.save();
            p.setRenderHint(QPainter::Antialiasing, true);
            paintWires(canvas, build, layer);
            p.restore();
            continue;
        }
        if (!shared) p.fillRect(seen, tint(hue, canvas.base()));
        p.setPen(canvas.pen(hatchColour(hue, canvas.base())));
        hatch(p, seen, bench::windingBrushStyle(canvas.windingIndex(shape.winding)), 6);
        canvas.outline(r, hue);
    }
}

/// The ends of a box shield, folded over what lies beneath.
void paintFolds(const Canvas& canvas, const Shape& shape) {
    const double heavy = 3;
    for (const double y : {shape.box.y0, shape.box.y1}) {
        const QPointF from = canvas.frame.point(shape.foldedTo, y), to = canvas.frame.point(shape.box.middle(), y);
        const double top = std::round(y == shape.box.y0 ? from.y() - heavy : from.y());
        const QRectF fold(std::min(from.x(), to.x()), top, std::abs(to.x() - from.x()), heavy);
        if (const QRectF seen = canvas.seen(fold); !seen.isEmpty())
            canvas.painter.fillRect(seen, canvas.colour(Token::Foil));
    }
}

}  // namespace

bool showsLayers(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape) {
    for (const auto& layer : build.layers)
        if (layer.item == shape.item) return !layer.random && layer.box.width() * canvas.frame.scale >= layerFrom;
    return false;
}

void paintSection(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape, bool shared) {
    const QRectF r = canvas.rect(shape.box);
    const QRectF seen = canvas.seen(r);
    if (seen.isEmpty()) return;
    if (showsLayers(canvas, build, shape)) {
        paintLayers(canvas, build, shape, shared);
        return;
    }
    auto& p = canvas.painter;
    const QColor hue = canvas.hue(shape.winding);
    if (!shared) p.fillRect(seen, tint(hue, canvas.base()));
    p.setPen(canvas.pen(hatchColour(hue, canvas.base())));
    hatch(p, seen, bench::windingBrushStyle(canvas.windingIndex(shape.winding)), 6);
    canvas.outline(r, hue);
}

void paintShield(const Canvas& canvas, const Shape& shape) {
    QRectF r = canvas.rect(shape.box);
    const double heavy = 3;
    if (r.width() < heavy) r = QRectF(std::round(r.center().x() - heavy / 2), r.top(), heavy, r.height());
    const QRectF seen = canvas.seen(r);
    if (seen.isEmpty()) return;
    auto& p = canvas.painter;
    const QColor copper = canvas.colour(Token::Foil);
    p.fillRect(seen, copper);
    if (shape.isFolded()) return paintFolds(canvas, shape);
    // Both ends stay open: a small empty square on each.
    const double side = 5;
    for (const double y : {r.top() + side / 2, r.bottom() - side / 2}) {
        const QRectF end(r.center().x() - side / 2, y - side / 2, side, side);
        if (!canvas.area.intersects(end)) continue;
        p.fillRect(end, canvas.base());
        canvas.outline(end, copper);
    }
}

void paintEnds(const Canvas& canvas, const Shape& shape) {
    if (shape.kind != Shape::Kind::Section) return;
    const QRectF r = canvas.rect(shape.box);
    const double radius = std::clamp(r.width() / 4 - 0.5, 2.0, 3.5);
    QPointF start = canvas.frame.point(shape.startX, shape.startY),
            finish = canvas.frame.point(shape.finishX, shape.finishY);
    const double apart = 2 * radius + 2;
    if (std::abs(start.y() - finish.y()) < apart && std::abs(start.x() - finish.x()) < apart) {
        const double middle = (start.x() + finish.x()) / 2, side = start.x() <= finish.x() ? -apart / 2 : apart / 2;
        start.setX(middle + side);
        finish.setX(middle - side);
    }
    // Just outside the copper, so that neither covers a label.
    const auto outside = [&](QPointF at, double y) {
        const bool atTop = std::abs(y - shape.box.y1) < std::abs(y - shape.box.y0);
        return QPointF(at.x(), at.y() + (atTop ? -radius - 1 : radius + 1));
    };
    auto& p = canvas.painter;
    p.save();
    p.setRenderHint(QPainter::Antialiasing, true);
    const QColor ink = canvas.colour(Token::Text);
    p.setPen(QPen(ink, 1.2));
    p.setBrush(ink);
    const QPointF startAt = outside(start, shape.startY), finishAt = outside(finish, shape.finishY);
    if (canvas.area.contains(startAt)) p.drawEllipse(startAt, radius, radius);
    p.setBrush(canvas.base());
    if (canvas.area.contains(finishAt)) p.drawEllipse(finishAt, radius, radius);
    p.restore();
}

}  // namespace cut
