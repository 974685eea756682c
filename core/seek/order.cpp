// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/order.h"

#include <algorithm>
#include <set>
#include <utility>

#include "units/fault.h"

namespace seek {

int Order::sectionsOf(std::size_t winding) const {
    return static_cast<int>(std::count(sections.begin(), sections.end(), winding));
}

namespace {

using Sections = std::vector<std::size_t>;
using Places = std::vector<std::vector<std::size_t>>;

constexpr std::size_t mostSections = 6;

/// Windings that are the same to everybody appear in their own order.
bool inTurn(const Need& need, const Sections& sections) {
    for (std::size_t a = 0; a < need.windings.size(); ++a)
        for (std::size_t b = a + 1; b < need.windings.size(); ++b) {
            const auto &wa = need.windings[a], &wb = need.windings[b];
            if (wa.side != wb.side || wa.ratio != wb.ratio) continue;
            if (std::find(sections.begin(), sections.end(), b) < std::find(sections.begin(), sections.end(), a))
                return false;
        }
    return true;
}

bool neighboursDiffer(const Sections& sections) {
    return std::adjacent_find(sections.begin(), sections.end()) == sections.end();
}

void addArrangements(const Need& need, Sections sections, std::vector<Sections>& all) {
    std::sort(sections.begin(), sections.end());
    do {
        if (neighboursDiffer(sections) && inTurn(need, sections)) all.push_back(sections);
    } while (std::next_permutation(sections.begin(), sections.end()));
}

std::vector<Sections> arrangements(const Need& need) {
    const std::size_t windings = need.windings.size();
    std::vector<Sections> all;
    Sections whole;
    for (std::size_t w = 0; w < windings; ++w) whole.push_back(w);
    addArrangements(need, whole, all);
    for (std::size_t w = 0; w < windings && windings > 1 && windings < mostSections; ++w) {
        if (windings > 2 && need.windings[w].side != 0) continue;
        Sections split = whole;
        split.push_back(w);
        addArrangements(need, split, all);
    }
    if (windings == 2) {
        addArrangements(need, {0, 0, 1, 1}, all);
        addArrangements(need, {0, 0, 0, 1, 1}, all);
        addArrangements(need, {0, 0, 1, 1, 1}, all);
    }
    return all;
}

int sideOf(const Need& need, const Sections& sections, std::size_t k) {
    return need.windings[sections[k]].side;
}

/// Gaps, named by the section outside of them, where two sides face.
std::vector<std::size_t> facingGaps(const Need& need, const Sections& sections) {
    std::vector<std::size_t> gaps;
    for (std::size_t k = 1; k < sections.size(); ++k)
        if (sideOf(need, sections, k) != sideOf(need, sections, k - 1)) gaps.push_back(k);
    return gaps;
}

bool named(const Need& need, const std::string& shield) {
    for (const auto& h : need.frame.hookUps) {
        if (std::find(h.earths.begin(), h.earths.end(), shield) != h.earths.end()) return true;
        for (const auto& strap : h.straps)
            if (std::find(strap.begin(), strap.end(), shield) != strap.end()) return true;
    }
    return false;
}

/// Gaps where a side faces the driven one; where it does not, all its gaps.
std::vector<std::size_t> gapsOf(const Need& need, const Sections& sections, int side) {
    std::vector<std::size_t> facing, any;
    for (const std::size_t gap : facingGaps(need, sections)) {
        const int inner = sideOf(need, sections, gap - 1), outer = sideOf(need, sections, gap);
        if (inner != side && outer != side) continue;
        any.push_back(gap);
        if (inner == 0 || outer == 0) facing.push_back(gap);
    }
    return facing.empty() ? any : facing;
}

/// A shield for each side that is not driven, in the order of the sides.
void facingTheirSides(const Need& need, const Sections& sections, std::vector<Places>& all) {
    std::vector<Places> sofar{Places(sections.size())};
    for (std::size_t s = 0; s < need.shields.size(); ++s) {
        const int side = static_cast<int>(s) + 1;
        std::vector<Places> next;
        for (const auto& places : sofar)
            for (const std::size_t gap : gapsOf(need, sections, side)) {
                next.push_back(places);
                auto& here = next.back()[gap];
                // Nearest to its own side.
                here.insert(sideOf(need, sections, gap - 1) == side ? here.begin() : here.end(), s);
            }
        sofar = std::move(next);
    }
    all.insert(all.end(), sofar.begin(), sofar.end());
}

/// All on one terminal: one a gap.
void oneInEachGap(const Need& need, const Sections& sections, std::vector<Places>& all) {
    const auto gaps = facingGaps(need, sections);
    std::vector<std::size_t> used;
    for (std::size_t s = 0; s < need.shields.size(); ++s)
        if (used.size() < gaps.size() || named(need, need.shields[s].name)) used.push_back(s);
    if (used.size() > gaps.size()) return;
    std::vector<bool> chosen(gaps.size(), false);
    std::fill(chosen.begin(), chosen.begin() + static_cast<std::ptrdiff_t>(used.size()), true);
    do {
        Places places(sections.size());
        std::size_t next = 0;
        for (std::size_t g = 0; g < gaps.size(); ++g)
            if (chosen[g]) places[gaps[g]].push_back(used[next++]);
        all.push_back(std::move(places));
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
}

void allInOneGap(const Need& need, const Sections& sections, std::vector<Places>& all) {
    for (const std::size_t gap : facingGaps(need, sections)) {
        Places places(sections.size());
        for (std::size_t s = 0; s < need.shields.size(); ++s) places[gap].push_back(s);
        if (sideOf(need, sections, gap) == 0) std::reverse(places[gap].begin(), places[gap].end());
        all.push_back(std::move(places));
    }
}

std::vector<Places> shieldPlaces(const Need& need, const Sections& sections) {
    std::set<std::string> terminals;
    for (const auto& s : need.shields) terminals.insert(s.terminal.empty() ? s.name : s.terminal);
    std::vector<Places> all;
    if (need.shields.empty())
        all.emplace_back(sections.size());
    else if (terminals.size() == need.shields.size() && static_cast<int>(terminals.size()) == need.sides - 1)
        facingTheirSides(need, sections, all);
    else if (terminals.size() == 1)
        oneInEachGap(need, sections, all);
    else
        allInOneGap(need, sections, all);
    return all;
}

}  // namespace

std::vector<Order> ordersOf(const Need& need) {
    std::vector<Order> all;
    for (const auto& sections : arrangements(need))
        for (auto& places : shieldPlaces(need, sections)) all.push_back({sections, std::move(places)});
    return all;
}

void refuseNone(const std::vector<Order>& orders) {
    if (orders.empty())
        units::refuse("hook_ups", "shields that no order of the windings has gaps for",
                      "at most one shield to a gap between two sides");
}

Order orderOf(const design::Design& design, const Need& need) {
    if (design.coil.size() != 1)
        units::refuse("command line: --hold", "the order of a coil in more than one place",
                      "a coil in one chamber, or an order that is sought");
    Order order;
    std::vector<std::size_t> shields;
    for (const auto& item : design.coil.front().order) {
        if (const auto* shield = item.shield())
            for (std::size_t s = 0; s < need.shields.size(); ++s)
                if (need.shields[s].name == shield->name) shields.push_back(s);
        const auto* section = item.section();
        if (section == nullptr) continue;
        for (std::size_t w = 0; w < need.windings.size(); ++w)
            if (need.windings[w].winding.name == section->winding) order.sections.push_back(w);
        order.shields.push_back(std::exchange(shields, {}));
    }
    return order;
}

std::string orderWords(const Order& order, const Need& need) {
    std::string text;
    for (std::size_t k = 0; k < order.sections.size(); ++k) {
        for (std::size_t s = 0; s < order.shields[k].size(); ++s) text += " | foil";
        if (k > 0) text += " | ";
        text += need.windings[order.sections[k]].winding.name;
    }
    return text;
}

}  // namespace seek
