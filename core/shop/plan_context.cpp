// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "shop/plan_rows.h"
#include "shop/sheet_words.h"
#include "units/joined.h"

namespace shop {

using units::joined;

namespace {

std::string place(const design::Design& design, const std::string& terminal) {
    const auto* found = terminalOf(design, terminal);
    return found != nullptr ? pinWords(*found) : terminal;
}

}  // namespace

std::string PlanContext::winding(const std::string& name) const {
    const auto role = roles.find(name);
    return role == roles.end() ? name : joined({role->second.title, " (", name, ")"});
}

std::string PlanContext::electrode(const std::string& name) const {
    if (design::winding(design, name) != nullptr) return winding(name);
    return name == "core" || name.find("shield") != std::string::npos ? name : "shield " + name;
}

std::string PlanContext::ends(const design::Winding& w) const {
    return joined({"start ", place(design, w.start), ", finish ", place(design, w.finish)});
}

std::string PlanContext::terminals(const design::Winding& w) const {
    return joined({w.start, " to ", w.finish});
}

Promised PlanContext::promised(const std::string& figure) const {
    Promised all;
    for (const auto& promise : design.brief.promises) {
        if (promise.figure != figure) continue;
        if (promise.atLeast && (!all.atLeast || *promise.atLeast > *all.atLeast)) all.atLeast = promise.atLeast;
        if (promise.atMost && (!all.atMost || *promise.atMost < *all.atMost)) all.atMost = promise.atMost;
        all.words = "promised to the customer";
    }
    return all;
}

const design::Winding& PlanContext::longest() const {
    return *std::max_element(design.windings.begin(), design.windings.end(), [&](const auto& a, const auto& b) {
        return design::conductorTurns(design, a) < design::conductorTurns(design, b);
    });
}

PlanRow& RowList::add(TestOrder order, const std::string& what, const std::string& name) {
    PlanRow row;
    row.order = order;
    row.what = what;
    row.name = name;
    rows.push_back(std::move(row));
    return rows.back();
}

void RowList::limit(PlanRow& row, const Window& window, units::Kind kind, std::optional<double> expected) {
    row.low = window.low;
    row.high = window.high;
    row.origin = window.origin;
    if (!window.doubt.empty()) row.doubt += (row.doubt.empty() ? "" : "; ") + window.doubt;
    row.needed = window.needed;
    row.kind = kind;
    row.expected = expected;
}

}  // namespace shop
