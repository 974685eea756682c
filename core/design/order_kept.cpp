// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/order_kept.h"

namespace design {

namespace {

std::vector<std::string> coilOrder(const Design& d, const std::string& winding) {
    std::vector<std::string> names;
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Section* s = item.section(); s && s->winding == winding) names.push_back(s->name);
    return names;
}

}  // namespace

SeriesOrder seriesOrder(const Design& d) {
    SeriesOrder all;
    for (const Winding& w : d.windings) {
        auto& names = all[w.name];
        for (const Section* s : sectionsOf(d, w)) names.push_back(s->name);
    }
    return all;
}

void keepOrder(Design& after, const Design& before, const SeriesOrder& wanted) {
    for (Winding& w : after.windings) {
        const auto lies = coilOrder(after, w.name);
        if (lies == coilOrder(before, w.name)) continue;
        const auto want = wanted.find(w.name);
        if (want == wanted.end() || want->second == lies)
            w.order.clear();
        else
            w.order = want->second;
    }
}

}  // namespace design
