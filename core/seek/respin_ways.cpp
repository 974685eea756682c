// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/respin_ways.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "design/edit.h"
#include "shop/materials.h"
#include "units/joined.h"

namespace seek {

using design::Design;
using units::joined;

namespace {

constexpr double stepWithoutStock = 25e-6;  // m
const std::vector<double> shares{0.005, 0.01, 0.02, 0.03, 0.05, 0.08, 0.12, 0.18, 0.25, 0.35, 0.5};
const std::vector<double> counts{1, 2, 3, 4, 5, 6, 8, 10};

/// The unit keeps its own share off what is changed.
void setBoth(units::Quantity& recipe, units::Quantity& unit, double value) {
    if (unit.value == recipe.value)
        unit.value = value;
    else
        unit.value = recipe.value != 0 ? unit.value * value / recipe.value : unit.value + value;
    recipe.value = value;
}

template <class Act>
void forItems(Spun& spun, const Act& act) {
    for (std::size_t p = 0; p < spun.recipe.coil.size(); ++p)
        for (std::size_t i = 0; i < spun.recipe.coil[p].order.size(); ++i)
            act(spun.recipe.coil[p].order[i], spun.unit.coil[p].order[i]);
}

std::string listed(const std::set<std::string>& names) {
    std::string text;
    for (const auto& name : names) text.append(text.empty() ? "" : " and ").append(name);
    return text;
}

bool strappedTogether(const Design& design, const design::Winding& a, const design::Winding& b) {
    const auto has = [](const std::vector<std::string>& strap, const design::Winding& w) {
        return std::any_of(strap.begin(), strap.end(), [&](const auto& n) { return n == w.start || n == w.finish; });
    };
    for (const auto& hookUp : design.hookUps)
        for (const auto& strap : hookUp.straps)
            if (has(strap, a) && has(strap, b)) return true;
    return false;
}

bool inOneHand(const Design& design, const std::string& a, const std::string& b) {
    std::set<std::string> hands;
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (const auto* s = item.section(); s != nullptr && s->winding == a && !s->hand.empty())
                hands.insert(s->hand);
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (const auto* s = item.section(); s != nullptr && s->winding == b && hands.contains(s->hand)) return true;
    return false;
}

/// Windings whose turns are changed together: wound in one hand, or equal and strapped to each other.
std::vector<std::set<std::string>> togetherOf(const Design& design) {
    std::vector<std::set<std::string>> groups;
    for (const auto& w : design.windings) {
        std::set<std::string> own{w.name};
        std::vector<std::set<std::string>> apart;
        for (auto& group : groups) {
            const bool joins = std::any_of(group.begin(), group.end(), [&](const std::string& name) {
                const auto& other = *design::winding(design, name);
                const bool equal = design::conductorTurns(design, other) == design::conductorTurns(design, w);
                return inOneHand(design, name, w.name) || (equal && strappedTogether(design, other, w));
            });
            if (joins)
                own.merge(group);
            else
                apart.push_back(std::move(group));
        }
        apart.push_back(std::move(own));
        groups = std::move(apart);
    }
    return groups;
}

/// Whole turns; the unit keeps the turns that were counted wrong.
double spinTurns(Spun& spun, const std::set<std::string>& windings, double factor) {
    double moved = 0, whole = 0;
    forItems(spun, [&](design::Item& recipe, design::Item& unit) {
        auto* section = recipe.section();
        if (section == nullptr || !windings.contains(section->winding)) return;
        const double after = std::max(1.0, std::round(section->turns * factor)), by = after - section->turns;
        whole += section->turns;
        moved += std::abs(by);
        unit.section()->turns.value += by;
        section->turns.value = after;
    });
    for (std::size_t w = 0; w < spun.recipe.windings.size(); ++w) {
        if (!windings.contains(spun.recipe.windings[w].name)) continue;
        for (std::size_t t = 0; t < spun.recipe.windings[w].taps.size(); ++t) {
            const double after = std::max(1.0, std::round(spun.recipe.windings[w].taps[t].turns * factor));
            spun.unit.windings[w].taps[t].turns.value = after;
            spun.recipe.windings[w].taps[t].turns.value = after;
        }
    }
    return whole > 0 ? moved / whole : 0;
}

void addTurns(const Design& recipe, std::vector<Way>& ways) {
    auto groups = togetherOf(recipe);
    if (groups.size() > 1) {
        std::set<std::string> all;
        for (const auto& group : groups) all.insert(group.begin(), group.end());
        groups.push_back(std::move(all));
    }
    for (const auto& group : groups)
        for (const double sign : {1.0, -1.0})
            ways.push_back(
                {Change::Turns, joined({sign > 0 ? "more" : "fewer", " turns of ", listed(group)}), shares, true,
                 [group, sign](Spun& spun, double amount) { return spinTurns(spun, group, 1 + sign * amount); }});
}

double stockStep(const Design& design, const design::Ply& ply, const catalog::Catalog& shop) {
    const auto* entry = design::part(design, ply.insulation, shop);
    if (entry == nullptr || entry->thicknesses.empty()) return stepWithoutStock;
    return *std::min_element(entry->thicknesses.begin(), entry->thicknesses.end());
}

/// Thickness of one barrier, or of all of them.
double spinBarriers(Spun& spun, const std::vector<design::ItemIndex>& barriers, const std::vector<double>& steps,
                    double count) {
    double share = 0;
    for (std::size_t k = 0; k < barriers.size(); ++k) {
        const auto p = static_cast<std::size_t>(barriers[k].place), i = static_cast<std::size_t>(barriers[k].item);
        auto& recipe = spun.recipe.coil[p].order[i].barrier()->ply.thickness;
        auto& unit = spun.unit.coil[p].order[i].barrier()->ply.thickness;
        const double after = recipe + count * steps[k];
        if (after < steps[k] / 2) return 0;
        share += std::abs(after / recipe - 1) / static_cast<double>(barriers.size());
        setBoth(recipe, unit, after);
    }
    return share;
}

void addBarriers(const Design& recipe, const catalog::Catalog& shop, std::vector<Way>& ways) {
    std::vector<design::ItemIndex> all;
    std::vector<double> steps;
    for (std::size_t p = 0; p < recipe.coil.size(); ++p)
        for (std::size_t i = 0; i < recipe.coil[p].order.size(); ++i)
            if (const auto* b = recipe.coil[p].order[i].barrier(); b != nullptr && b->ply.thickness > 0) {
                all.push_back({static_cast<int>(p), static_cast<int>(i)});
                steps.push_back(stockStep(recipe, b->ply, shop));
            }
    const auto add = [&](const std::string& what, const std::vector<design::ItemIndex>& items,
                         const std::vector<double>& by) {
        for (const double sign : {1.0, -1.0})
            ways.push_back(
                {Change::Paper, joined({sign > 0 ? "thicker " : "thinner ", what}), counts, false,
                 [items, by, sign](Spun& spun, double count) { return spinBarriers(spun, items, by, sign * count); }});
    };
    for (std::size_t k = 0; k < all.size(); ++k)
        add("insulation " + std::to_string(all[k].item + 1), {all[k]}, {steps[k]});
    if (all.size() > 1) add("insulation everywhere", all, steps);
}

/// Stock thicknesses beyond `thickness` in one direction, the nearest first.
std::vector<double> beyond(const Design& design, const design::Ply& ply, const catalog::Catalog& shop, bool thicker) {
    std::set<double> all;
    if (const auto* entry = design::part(design, ply.insulation, shop))
        all.insert(entry->thicknesses.begin(), entry->thicknesses.end());
    std::vector<double> found;
    constexpr double same = 1.02;
    for (const double t : all)
        if (thicker ? t > ply.thickness * same : t * same < ply.thickness) found.push_back(t);
    if (!thicker) std::reverse(found.begin(), found.end());
    return found;
}

double spinInterlayers(Spun& spun, const std::string& winding, double thickness) {
    double share = 0;
    forItems(spun, [&](design::Item& recipe, design::Item& unit) {
        auto* section = recipe.section();
        if (section == nullptr || section->winding != winding || !section->interlayer) return;
        if (section->interlayer->thickness > 0)
            share = std::max(share, std::abs(thickness / section->interlayer->thickness - 1));
        setBoth(section->interlayer->thickness, unit.section()->interlayer->thickness, thickness);
    });
    return share;
}

void addInterlayers(const Design& recipe, const catalog::Catalog& shop, std::vector<Way>& ways) {
    std::set<std::string> done;
    for (const auto& place : recipe.coil)
        for (const auto& item : place.order) {
            const auto* section = item.section();
            if (section == nullptr || !section->interlayer || !done.insert(section->winding).second) continue;
            for (const bool thicker : {true, false})
                ways.push_back(
                    {Change::Paper,
                     joined({thicker ? "thicker" : "thinner", " paper between layers of ", section->winding}),
                     beyond(recipe, *section->interlayer, shop, thicker), false,
                     [winding = section->winding](Spun& spun, double thickness) {
                         return spinInterlayers(spun, winding, thickness);
                     }});
        }
}

/// Two items of one place with nothing but insulation in between.
struct Neighbours {
    int place = 0, inner = 0, outer = 0;
};
std::vector<Neighbours> neighboursOf(const Design& design) {
    std::vector<Neighbours> all;
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        int before = -1;
        const auto& order = design.coil[p].order;
        for (int i = 0; i < static_cast<int>(order.size()); ++i) {
            if (order[static_cast<std::size_t>(i)].barrier() != nullptr) continue;
            if (before >= 0) all.push_back({static_cast<int>(p), before, i});
            before = i;
        }
    }
    return all;
}
const design::Item& itemOf(const Design& d, int place, int item) {
    return d.coil[static_cast<std::size_t>(place)].order[static_cast<std::size_t>(item)];
}
std::string nameOf(const design::Item& item) {
    return item.section() != nullptr ? item.section()->label() : "shield " + item.shield()->name;
}

double exchange(Spun& spun, const Neighbours& n) {
    for (auto* d : {&spun.recipe, &spun.unit}) {
        auto& order = d->coil[static_cast<std::size_t>(n.place)].order;
        std::swap(order[static_cast<std::size_t>(n.inner)], order[static_cast<std::size_t>(n.outer)]);
    }
    return 2;
}

/// Half of a section beyond its neighbour, with the same insulation on both sides of that.
double interleave(Spun& spun, const Neighbours& n, bool outward) {
    for (auto* d : {&spun.recipe, &spun.unit}) {
        const int split = outward ? n.inner : n.outer;
        auto next = design::splitSection(*d, {n.place, split});
        if (next->coil[static_cast<std::size_t>(n.place)].order.size() ==
            d->coil[static_cast<std::size_t>(n.place)].order.size())
            return 0;
        if (outward)
            next = design::moveItem(*next, {n.place, n.inner + 1}, {n.place, n.outer + 2});
        else
            next = design::moveItem(*next, {n.place, n.outer}, {n.place, n.inner});
        if (n.outer - n.inner == 2) {
            const auto barrier = itemOf(*d, n.place, n.inner + 1);
            next = design::insertItem(*next, {n.place, outward ? n.outer + 1 : n.inner + 1}, barrier);
        }
        *d = *next;
    }
    return 3;
}

void addOrders(const Design& recipe, std::vector<Way>& ways) {
    for (const auto& n : neighboursOf(recipe)) {
        const auto &inner = itemOf(recipe, n.place, n.inner), &outer = itemOf(recipe, n.place, n.outer);
        const auto *a = inner.section(), *b = outer.section();
        if (a == nullptr && b == nullptr) continue;
        if (a != nullptr && b != nullptr && (a->winding == b->winding || !a->hand.empty() || !b->hand.empty()))
            continue;
        ways.push_back({Change::Order,
                        joined({nameOf(inner), " and ", nameOf(outer), " exchanged"}),
                        {1},
                        false,
                        [n](Spun& spun, double) { return exchange(spun, n); }});
        if (a == nullptr || b == nullptr || n.outer - n.inner > 2) continue;
        for (const bool outward : {true, false})
            ways.push_back({Change::Order,
                            joined({"half of ", nameOf(outward ? inner : outer), " on the other side of ",
                                    nameOf(outward ? outer : inner)}),
                            {1},
                            false,
                            [n, outward](Spun& spun, double) { return interleave(spun, n, outward); }});
    }
}

/// Interleaved sheets have no gap that could be set: theirs is what the joints leave.
void addGap(const Design& recipe, std::vector<Way>& ways) {
    if (recipe.core.joint != design::Joint::Butt || !(recipe.core.gap > 0)) return;
    for (const double sign : {1.0, -1.0})
        ways.push_back(
            {Change::Gap, sign > 0 ? "longer gap" : "shorter gap", shares, true, [sign](Spun& spun, double amount) {
                 constexpr double whole = 1e-6;
                 auto& gap = spun.recipe.core.gap;
                 const double before = gap, after = std::round(before * (1 + sign * amount) / whole) * whole;
                 if (after <= 0 || after == before) return 0.0;
                 setBoth(gap, spun.unit.core.gap, after);
                 return std::abs(after / before - 1);
             }});
}

void addShares(const Design& recipe, std::vector<Way>& ways) {
    const auto& stack = recipe.core.stack;
    for (std::size_t from = 0; from < stack.size(); ++from)
        for (std::size_t to = 0; to < stack.size(); ++to) {
            if (from == to || stack[from].alloy == stack[to].alloy || !(stack[from].share > 0)) continue;
            ways.push_back({Change::SheetShare,
                            joined({"sheets of ", stack[to].alloy.key, " for ", stack[from].alloy.key}),
                            {1, 2, 3, 5, 8, 12, 20, 30, 50, 80},
                            false,
                            [from, to](Spun& spun, double sheets) {
                                auto& core = spun.recipe.core;
                                const double by =
                                    sheets * core.stack[to].thickness / (core.height * core.stackingFactor);
                                if (core.stack[from].share - by < 0) return 0.0;
                                for (auto* d : {&spun.recipe, &spun.unit}) {
                                    d->core.stack[from].share.value -= by;
                                    d->core.stack[to].share.value += by;
                                }
                                return by;
                            }});
        }
}

}  // namespace

std::vector<Way> waysOf(const Design& recipe, const catalog::Catalog& shop) {
    std::vector<Way> ways;
    addBarriers(recipe, shop, ways);
    addInterlayers(recipe, shop, ways);
    addGap(recipe, ways);
    addShares(recipe, ways);
    addOrders(recipe, ways);
    addTurns(recipe, ways);
    return ways;
}

}  // namespace seek
