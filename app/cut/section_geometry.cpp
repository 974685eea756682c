// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/section_geometry.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace cut {

using coil::Box;
using coil::CoilBuild;
using design::ItemIndex;

namespace {

Box united(const Box& a, const Box& b) {
    return {std::min(a.x0, b.x0), std::max(a.x1, b.x1), std::min(a.y0, b.y0), std::max(a.y1, b.y1)};
}

/// The section's layers as one shape, still measured from its own leg.
std::optional<Shape> sectionShape(const CoilBuild& build, ItemIndex index, const design::Section& section) {
    Shape shape;
    shape.item = index;
    shape.winding = section.winding;
    shape.name = section.label();
    const coil::Layer* first = nullptr;
    const coil::Layer* last = nullptr;
    double length = 0, height = 0;
    for (const auto& layer : build.layers) {
        if (layer.item != index || layer.winding != section.winding || layer.section != section.name) continue;
        shape.box = first == nullptr ? layer.box : united(shape.box, layer.box);
        if (first == nullptr) first = &layer;
        last = &layer;
        shape.turns += layer.turns;
        shape.layers = std::max(shape.layers, layer.number);
        if (layer.turns > shape.turnsPerLayer) shape.turnsPerLayer = layer.turns;
        shape.resistance20 += layer.resistance20;
        length += layer.turns * layer.turnLength;
        height = std::max(height, layer.box.height());
        shape.random = layer.random;
    }
    if (first == nullptr) return std::nullopt;
    shape.meanTurn = shape.turns > 0 ? length / shape.turns : 0;
    shape.leg = first->leg;
    shape.chamber = first->chamber;
    const bool fromLow = first->begins == design::End::Low, toHigh = last->begins == design::End::Low;
    shape.startX = shape.random ? first->box.x0 : first->box.middle();
    shape.startY = fromLow ? first->box.y0 : first->box.y1;
    shape.finishX = shape.random ? last->box.x1 : last->box.middle();
    shape.finishY = toHigh ? last->box.y1 : last->box.y0;
    return shape;
}

std::optional<Shape> shieldShape(const CoilBuild& build, ItemIndex index, const design::Shield& shield) {
    for (const auto& foil : build.foils)
        if (foil.item == index && foil.name == shield.name) {
            Shape shape;
            shape.kind = Shape::Kind::Shield;
            shape.item = index;
            shape.name = foil.name;
            shape.leg = foil.leg;
            shape.chamber = foil.chamber;
            shape.box = foil.box;
            shape.foldedTo = foil.isFolded() ? foil.foldedTo : foil.box.x0;
            shape.meanTurn = foil.turnLength;
            return shape;
        }
    return std::nullopt;
}

/// The sheet that starts where the item before it ended.
std::optional<Shape> barrierShape(const CoilBuild& build, const design::Place& place, ItemIndex index,
                                  const design::Barrier& barrier, double from) {
    const coil::Dielectric* nearest = nullptr;
    const double thickness = barrier.ply.thickness;
    for (const auto& sheet : build.dielectrics) {
        if (sheet.bobbin || sheet.leg != place.leg || sheet.chamber != place.chamber || sheet.box.x0 < from - 1e-9)
            continue;
        if (std::abs(sheet.box.width() - thickness) > 1e-9) continue;
        if (nearest == nullptr || sheet.box.x0 < nearest->box.x0) nearest = &sheet;
    }
    if (nearest == nullptr) return std::nullopt;
    Shape shape;
    shape.kind = Shape::Kind::Barrier;
    shape.item = index;
    shape.name = nearest->name;
    shape.leg = place.leg;
    shape.chamber = place.chamber;
    shape.box = nearest->box;
    return shape;
}

void mirror(const CoilBuild& build, Shape& shape) {
    shape.box = drawn(build, shape.leg, shape.box);
    if (shape.leg != 2) return;
    shape.foldedTo = build.windowWidth - shape.foldedTo;
    shape.startX = build.windowWidth - shape.startX;
    shape.finishX = build.windowWidth - shape.finishX;
}

const coil::ChamberFill* fillOf(const CoilBuild& build, const design::Place& place) {
    for (const auto& fill : build.fill)
        if (fill.leg == place.leg && fill.chamber == place.chamber) return &fill;
    return nullptr;
}

double distanceTo(const Box& box, double x, double y) {
    const double dx = std::max({box.x0 - x, 0.0, x - box.x1}), dy = std::max({box.y0 - y, 0.0, y - box.y1});
    return std::hypot(dx, dy);
}

bool inside(const Box& box, double x, double y) {
    return x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1;
}

}  // namespace

Box drawn(const CoilBuild& build, int leg, const Box& box) noexcept {
    if (leg != 2) return box;
    return {build.windowWidth - box.x1, build.windowWidth - box.x0, box.y0, box.y1};
}

const design::Item* itemAt(const design::Design& design, ItemIndex index) noexcept {
    if (index.place < 0 || index.place >= static_cast<int>(design.coil.size())) return nullptr;
    const auto& order = design.coil[static_cast<std::size_t>(index.place)].order;
    if (index.item < 0 || index.item >= static_cast<int>(order.size())) return nullptr;
    return &order[static_cast<std::size_t>(index.item)];
}

std::vector<Shape> shapesOf(const CoilBuild& build, const design::Design& design) {
    std::vector<Shape> shapes;
    for (int p = 0; p < static_cast<int>(design.coil.size()); ++p) {
        const auto& place = design.coil[static_cast<std::size_t>(p)];
        const auto* fill = fillOf(build, place);
        double outside = fill != nullptr ? fill->room.x0 : 0;
        for (int i = 0; i < static_cast<int>(place.order.size()); ++i) {
            const ItemIndex index{p, i};
            const auto& item = place.order[static_cast<std::size_t>(i)];
            std::optional<Shape> shape;
            if (const auto* section = item.section()) shape = sectionShape(build, index, *section);
            if (const auto* shield = item.shield()) shape = shieldShape(build, index, *shield);
            if (const auto* barrier = item.barrier()) shape = barrierShape(build, place, index, *barrier, outside);
            if (!shape) continue;
            outside = std::max(outside, shape->box.x1);
            mirror(build, *shape);
            shapes.push_back(*shape);
        }
    }
    return shapes;
}

std::vector<Overshoot> overshoots(const CoilBuild& build) {
    std::vector<Overshoot> all;
    for (const auto& fill : build.fill)
        if (fill.over > 1e-9)
            all.push_back({drawn(build, fill.leg, {fill.room.x1, fill.room.x1 + fill.over, fill.room.y0, fill.room.y1}),
                           fill.over, fill.leg, fill.chamber});
    return all;
}

const Shape* shapeOf(const std::vector<Shape>& shapes, ItemIndex item) noexcept {
    const auto it = std::find_if(shapes.begin(), shapes.end(), [&](const Shape& s) { return s.item == item; });
    return it == shapes.end() ? nullptr : &*it;
}

document::Selected hit(const CoilBuild& build, const std::vector<Shape>& shapes, double x, double y, double slack,
                       const document::Selected& current) {
    const Shape* thin = nullptr;
    std::vector<ItemIndex> under;
    for (const auto& shape : shapes) {
        const bool isThin = shape.box.width() < 2 * slack;
        if (!isThin && inside(shape.box, x, y)) under.push_back(shape.item);
        if (!isThin || y < shape.box.y0 || y > shape.box.y1 || std::abs(x - shape.box.middle()) > slack) continue;
        if (thin == nullptr || std::abs(x - shape.box.middle()) < std::abs(x - thin->box.middle())) thin = &shape;
    }
    if (thin != nullptr) return thin->item;
    if (!under.empty()) {
        const auto* now = std::get_if<ItemIndex>(&current);
        const auto at = now == nullptr ? under.end() : std::find(under.begin(), under.end(), *now);
        return at == under.end() || at + 1 == under.end() ? under.front() : *(at + 1);
    }
    if (!inside({0, build.windowWidth, 0, build.windowHeight}, x, y))
        return document::WholePart{document::WholePart::Which::Core};
    for (const auto& sheet : build.dielectrics)
        if (sheet.bobbin && inside(drawn(build, sheet.leg, sheet.box), x, y))
            return document::WholePart{document::WholePart::Which::Bobbin};
    return {};
}

std::optional<Landing> landingAt(const CoilBuild& build, const design::Design& design, const std::vector<Shape>& shapes,
                                 double x, double y) {
    int best = -1;
    double least = std::numeric_limits<double>::max();
    Box room;
    for (int p = 0; p < static_cast<int>(design.coil.size()); ++p) {
        const auto* fill = fillOf(build, design.coil[static_cast<std::size_t>(p)]);
        if (fill == nullptr) continue;
        const auto box = drawn(build, fill->leg, fill->room);
        if (const double far = distanceTo(box, x, y); far < least) {
            least = far;
            best = p;
            room = box;
        }
    }
    if (best < 0) return std::nullopt;
    const auto& place = design.coil[static_cast<std::size_t>(best)];
    const bool mirrored = place.leg == 2;
    const auto depth = [&](double at) { return mirrored ? build.windowWidth - at : at; };
    Landing landing{{best, static_cast<int>(place.order.size())}, mirrored ? room.x1 : room.x0, room.y0, room.y1};
    for (const auto& shape : shapes) {
        if (shape.item.place != best) continue;
        if (depth(x) < depth(shape.box.middle())) {
            landing.before = shape.item;
            landing.x = mirrored ? shape.box.x1 : shape.box.x0;
            return landing;
        }
        landing.x = mirrored ? shape.box.x0 : shape.box.x1;
    }
    return landing;
}

std::optional<ItemIndex> beside(const design::Design& design, ItemIndex from, int direction) {
    const auto line = [&] {
        std::vector<ItemIndex> all;
        for (int p = 0; p < static_cast<int>(design.coil.size()); ++p) {
            const auto& place = design.coil[static_cast<std::size_t>(p)];
            const int count = static_cast<int>(place.order.size());
            for (int i = 0; i < count; ++i) all.push_back({p, place.leg == 2 ? count - 1 - i : i});
        }
        return all;
    }();
    if (line.empty()) return std::nullopt;
    const auto at = std::find(line.begin(), line.end(), from);
    if (at == line.end()) return direction > 0 ? line.front() : line.back();
    if (direction < 0) return at == line.begin() ? *at : *(at - 1);
    return at + 1 == line.end() ? *at : *(at + 1);
}

std::optional<ItemIndex> acrossChambers(const design::Design& design, const std::vector<Shape>& shapes, ItemIndex from,
                                        int direction) {
    const auto* here = shapeOf(shapes, from);
    if (here == nullptr || itemAt(design, from) == nullptr) return std::nullopt;
    const Shape* best = nullptr;
    for (const auto& shape : shapes) {
        if (shape.leg != here->leg || (shape.chamber - here->chamber) * direction <= 0) continue;
        const auto rank = [&](const Shape& s) {
            return std::make_pair(std::abs(s.chamber - here->chamber), std::abs(s.box.middle() - here->box.middle()));
        };
        if (best == nullptr || rank(shape) < rank(*best)) best = &shape;
    }
    if (best == nullptr) return std::nullopt;
    return best->item;
}

}  // namespace cut
