// SPDX-License-Identifier: GPL-3.0-or-later
// Edits that move, insert and remove.
#include "design/edit.h"

#include <algorithm>

#include "design/order_kept.h"

namespace design {

namespace {

bool stands(const Design& d, ItemIndex at, int beyond) {
    if (at.place < 0 || at.place >= static_cast<int>(d.coil.size()) || at.item < 0) return false;
    return at.item < static_cast<int>(d.coil[static_cast<std::size_t>(at.place)].order.size()) + beyond;
}

std::vector<Item>& orderAt(Design& d, ItemIndex at) {
    return d.coil[static_cast<std::size_t>(at.place)].order;
}

}  // namespace

void forgetNode(HookUp& hookUp, const std::string& node) {
    std::erase(hookUp.earths, node);
    for (auto& strap : hookUp.straps) std::erase(strap, node);
    std::erase_if(hookUp.straps, [](const auto& strap) { return strap.size() < 2; });
}

DesignPtr moveItem(const Design& d, ItemIndex from, ItemIndex to) {
    return changed(d, [&](Design& copy) {
        if (!stands(d, from, 0) || !stands(d, to, 1)) return;
        auto& source = orderAt(copy, from);
        Item moved = source[static_cast<std::size_t>(from.item)];
        source.erase(source.begin() + from.item);
        const int target = to.place == from.place && to.item > from.item ? to.item - 1 : to.item;
        auto& goal = orderAt(copy, to);
        goal.insert(goal.begin() + target, std::move(moved));
        keepOrder(copy, d, seriesOrder(d));
    });
}

DesignPtr stepItem(const Design& d, ItemIndex item, int step) {
    // Standing before the item after the next one is one step outward.
    const ItemIndex to{item.place, step > 0 ? item.item + 2 : item.item - 1};
    return moveItem(d, item, step == 0 ? item : to);
}

DesignPtr insertItem(const Design& d, ItemIndex at, Item item) {
    return changed(d, [&](Design& copy) {
        if (!stands(d, at, 1)) return;
        SeriesOrder wanted = seriesOrder(d);
        const Section* fresh = item.section();
        const Winding* w = fresh ? winding(d, fresh->winding) : nullptr;
        const bool explicitOrder = w && !w->order.empty();
        if (explicitOrder) wanted[w->name].push_back(fresh->name);
        auto& order = orderAt(copy, at);
        order.insert(order.begin() + at.item, item);
        if (explicitOrder) keepOrder(copy, d, wanted);
    });
}

DesignPtr removeItem(const Design& d, ItemIndex at) {
    return changed(d, [&](Design& copy) {
        if (!stands(d, at, 0)) return;
        SeriesOrder wanted = seriesOrder(d);
        auto& order = orderAt(copy, at);
        const Item gone = order[static_cast<std::size_t>(at.item)];
        order.erase(order.begin() + at.item);
        if (const Section* s = gone.section()) std::erase(wanted[s->winding], s->name);
        if (const Shield* s = gone.shield())
            for (HookUp& h : copy.hookUps) forgetNode(h, s->name);
        keepOrder(copy, d, wanted);
    });
}

DesignPtr swapEnds(const Design& d, const std::string& winding) {
    return changed(d, [&](Design& copy) {
        for (Winding& w : copy.windings) {
            if (w.name != winding) continue;
            const std::string start = w.start, finish = w.finish;
            std::swap(w.start, w.finish);
            // A section that says itself where it ends follows the winding's ends.
            const auto other = [&](std::string& end) { end = end == start ? finish : end == finish ? start : end; };
            for (Place& place : copy.coil)
                for (Item& item : place.order)
                    if (Section* s = item.section(); s && s->winding == winding) other(s->start), other(s->finish);
        }
    });
}

}  // namespace design
