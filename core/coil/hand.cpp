// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/hand.h"

#include <algorithm>
#include <cmath>

#include "units/joined.h"

namespace coil {

namespace {

HandWire wireAt(const design::Design& design, const CoilBuild& build, std::size_t p, std::size_t i) {
    HandWire wire;
    wire.item = {static_cast<int>(p), static_cast<int>(i)};
    wire.section = design.coil[p].order[i].section();
    wire.winding = design::winding(design, wire.section->winding);
    for (const auto& layer : build.layers)
        if (layer.item == wire.item) wire.pieces.push_back(&layer);
    return wire;
}

/// Layer `number` of one wire; without turns where it has no such layer.
HandLayer layerOf(const HandWire& wire, int number) {
    HandLayer layer;
    for (const auto* piece : wire.pieces) {
        if (piece->number != number) continue;
        if (layer.turns == 0) {
            layer.low = piece->box.y0;
            layer.high = piece->box.y1;
            layer.fromLow = piece->begins == design::End::Low;
            layer.pitch = piece->pitch;
            layer.outside = piece->box.x1;
            layer.turnLength = piece->turnLength;
        }
        layer.low = std::min(layer.low, piece->box.y0);
        layer.high = std::max(layer.high, piece->box.y1);
        layer.turns += piece->turns;
    }
    return layer;
}

/// In each layer the wire that has most turns leads the guide.
void addLayers(Hand& hand) {
    for (int number = 1;; ++number) {
        HandLayer widest;
        for (const auto& wire : hand.wires) {
            const HandLayer one = layerOf(wire, number);
            if (one.turns > widest.turns) widest = one;
        }
        if (widest.turns <= 0) return;
        widest.first = hand.turns();
        hand.layers.push_back(widest);
    }
}

void addMoments(Hand& hand) {
    for (std::size_t k = 0; k < hand.wires.size(); ++k) {
        double done = 0;
        for (const auto* piece : hand.wires[k].pieces) {
            done += piece->turns;
            if (!piece->tapAfter.empty()) hand.moments.push_back({MomentKind::Tap, done, k, piece->tapAfter});
        }
        hand.moments.push_back({MomentKind::Finish, done, k, {}});
    }
    const auto& first = *hand.wires.front().section;
    if (first.interlayer && first.interlayer->thickness > 0 && first.lay != design::Lay::Random)
        for (std::size_t n = 1; n < hand.layers.size(); ++n)
            hand.moments.push_back({MomentKind::Paper, hand.layers[n].first, 0, {}});
    std::stable_sort(hand.moments.begin(), hand.moments.end(), [](const HandMoment& a, const HandMoment& b) {
        return std::abs(a.after - b.after) > 1e-9 ? a.after < b.after : a.kind < b.kind;
    });
}

}  // namespace

Hand handAt(const design::Design& design, const CoilBuild& build, std::size_t place, std::size_t item) {
    const auto& order = design.coil[place].order;
    Hand hand;
    hand.wires.push_back(wireAt(design, build, place, item));
    const auto& first = *hand.wires.front().section;
    while (!first.hand.empty() && item + 1 < order.size() && order[item + 1].section() != nullptr &&
           order[item + 1].section()->hand == first.hand)
        hand.wires.push_back(wireAt(design, build, place, ++item));
    hand.last = item;
    addLayers(hand);
    addMoments(hand);
    return hand;
}

std::vector<design::ItemIndex> itemsOfDielectrics(const design::Design& design, const CoilBuild& build) {
    std::vector<design::ItemIndex> laid;
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        const auto& order = design.coil[p].order;
        for (std::size_t i = 0; i < order.size(); ++i) {
            const design::ItemIndex here{static_cast<int>(p), static_cast<int>(i)};
            if (const auto* barrier = order[i].barrier(); barrier != nullptr && barrier->ply.thickness > 0)
                laid.push_back(here);
            if (order[i].section() == nullptr) continue;
            const Hand hand = handAt(design, build, p, i);
            for (const auto& moment : hand.moments)
                if (moment.kind == MomentKind::Paper) laid.push_back(here);
            i = hand.last;
        }
    }
    std::vector<design::ItemIndex> items;
    items.reserve(build.dielectrics.size());
    std::size_t next = 0;
    for (const auto& dielectric : build.dielectrics)
        items.push_back(dielectric.bobbin || next >= laid.size() ? design::ItemIndex{-1, -1} : laid[next++]);
    return items;
}

std::string stepNumber(const design::ItemIndex& item) {
    return units::joined({std::to_string(item.place + 1), ".", std::to_string(item.item + 1)});
}

}  // namespace coil
