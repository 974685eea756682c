// SPDX-License-Identifier: GPL-3.0-or-later
// Edits that split and join sections.
#include <algorithm>
#include <cmath>
#include <utility>

#include "design/edit.h"
#include "design/order_kept.h"

namespace design {

namespace {

std::vector<Item>* orderOf(Design& d, ItemIndex at) {
    if (at.place < 0 || at.place >= static_cast<int>(d.coil.size())) return nullptr;
    auto& order = d.coil[static_cast<std::size_t>(at.place)].order;
    return at.item >= 0 && at.item < static_cast<int>(order.size()) ? &order : nullptr;
}

/// "a" to "z", then "aa", "ab"…: the first that the winding has no section of.
std::string freeName(const Design& d, const std::string& winding) {
    for (int n = 0;; ++n) {
        std::string name;
        for (int rest = n + 1; rest > 0; rest = (rest - 1) / 26)
            name.insert(name.begin(), static_cast<char>('a' + (rest - 1) % 26));
        if (!section(d, winding, name)) return name;
    }
}

/// Position of the section that `first` can be joined with: of the same winding, only barriers between; 0 if none.
std::size_t joinable(const std::vector<Item>& order, std::size_t first) {
    const Section* a = order[first].section();
    for (std::size_t i = first + 1; a && i < order.size(); ++i) {
        if (order[i].barrier()) continue;
        const Section* b = order[i].section();
        return b && b->winding == a->winding && b->reversed == a->reversed ? i : 0;
    }
    return 0;
}

}  // namespace

DesignPtr splitSection(const Design& d, ItemIndex at) {
    return changed(d, [&](Design& copy) {
        auto* order = orderOf(copy, at);
        Section* first = order ? (*order)[static_cast<std::size_t>(at.item)].section() : nullptr;
        const Winding* w = first ? winding(d, first->winding) : nullptr;
        if (!w || w->connection == Connection::Parallel || first->turns < 2) return;
        Section second = *first;
        second.name = freeName(d, w->name);
        const double all = first->turns;
        first->turns.value = std::floor(all / 2);
        second.turns.value = all - first->turns.value;
        first->finish.clear();
        second.start.clear();
        SeriesOrder wanted = seriesOrder(d);
        auto& names = wanted[w->name];
        names.insert(std::next(std::find(names.begin(), names.end(), first->name)), second.name);
        order->insert(order->begin() + at.item + 1, Item{second});
        keepOrder(copy, d, wanted);
    });
}

DesignPtr joinSection(const Design& d, ItemIndex at) {
    return changed(d, [&](Design& copy) {
        auto* order = orderOf(copy, at);
        const std::size_t next = order ? joinable(*order, static_cast<std::size_t>(at.item)) : 0;
        if (next == 0) return;
        Section& kept = *(*order)[static_cast<std::size_t>(at.item)].section();
        const Section gone = *(*order)[next].section();
        const Winding* w = winding(d, kept.winding);
        if (!w || w->connection == Connection::Parallel) return;
        SeriesOrder wanted = seriesOrder(d);
        auto& names = wanted[w->name];
        const auto here = std::find(names.begin(), names.end(), kept.name);
        const auto there = std::find(names.begin(), names.end(), gone.name);
        const bool keptFirst = here < there;
        const Section& before = keptFirst ? kept : gone;
        const Section& after = keptFirst ? gone : kept;
        // A terminal between the two would be lost; sections in series elsewhere would change places.
        if (!before.finish.empty() || !after.start.empty() || std::abs(here - there) != 1) return;
        std::string start = before.start, finish = after.finish;
        kept.start = std::move(start);
        kept.finish = std::move(finish);
        kept.turns.value += gone.turns;
        names.erase(there);
        order->erase(order->begin() + at.item + 1, order->begin() + static_cast<std::ptrdiff_t>(next) + 1);
        keepOrder(copy, d, wanted);
    });
}

}  // namespace design
