// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/handles.h"

#include <algorithm>
#include <cmath>

#include "bench/language.h"
#include "cut/item_words.h"
#include "design/edit.h"

namespace cut {

namespace {

constexpr double side = 7, leastStep = 1e-6;  // pixels; m

QRectF square(const QPointF& centre) {
    return {centre.x() - side / 2, centre.y() - side / 2, side, side};
}

units::Quantity& edgeOf(design::Item& item, Handle::Edge edge) {
    if (auto* section = item.section()) return edge == Handle::Edge::Low ? section->marginLow : section->marginHigh;
    if (auto* shield = item.shield()) return edge == Handle::Edge::Low ? shield->marginLow : shield->marginHigh;
    return item.barrier()->ply.thickness;
}

}  // namespace

std::vector<Handle> handlesOf(const Frame& frame, const design::Design& design, const std::vector<Shape>& shapes,
                              const document::Selected& selected) {
    std::vector<Handle> handles;
    const auto* index = std::get_if<design::ItemIndex>(&selected);
    const auto* found = index != nullptr ? itemAt(design, *index) : nullptr;
    const auto* shape = index != nullptr ? shapeOf(shapes, *index) : nullptr;
    if (found == nullptr || shape == nullptr) return handles;
    design::Item item = *found;
    const auto add = [&](Handle::Edge edge, const QPointF& centre, const QPointF& grows) {
        handles.push_back({edge, *index, square(centre), grows, edgeOf(item, edge)});
    };
    const coil::Box& box = shape->box;
    if (item.barrier() != nullptr) {
        const bool mirrored = shape->leg == 2;
        add(Handle::Edge::Thickness, frame.point(mirrored ? box.x0 : box.x1, box.y0 + 0.75 * box.height()),
            {mirrored ? -1.0 : 1.0, 0});
        return handles;
    }
    add(Handle::Edge::Low, frame.point(box.middle(), box.y0), {0, -1});
    add(Handle::Edge::High, frame.point(box.middle(), box.y1), {0, 1});
    return handles;
}

QString handleWords(const design::Design& design, const Handle& handle) {
    const auto* item = itemAt(design, handle.item);
    const QString name = item != nullptr ? itemName(*item) : QString();
    switch (handle.edge) {
        case Handle::Edge::Low:
            return bench::translated("margin at the low end of %1").arg(name);
        case Handle::Edge::High:
            return bench::translated("margin at the high end of %1").arg(name);
        case Handle::Edge::Thickness:
            break;
    }
    return bench::translated("thickness of %1").arg(name);
}

double valueAfter(const Handle& handle, const QPointF& moved, double scale) {
    const double step = std::max(leastStep, rulerStep(scale, 2));
    const double by = QPointF::dotProduct(moved, handle.grows) / scale;
    const double least = handle.edge == Handle::Edge::Thickness ? step : 0;
    return std::max(least, std::round((handle.value + by) / step) * step);
}

design::DesignPtr withEdge(const design::Design& design, const Handle& handle, double value) {
    return design::changed(design, [&](design::Design& d) {
        auto& order = d.coil[static_cast<std::size_t>(handle.item.place)].order;
        edgeOf(order[static_cast<std::size_t>(handle.item.item)], handle.edge).value = value;
    });
}

}  // namespace cut
