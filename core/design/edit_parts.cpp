// SPDX-License-Identifier: GPL-3.0-or-later
// Edits of the copies of catalog entries that a design carries.
#include "design/edit.h"
#include "design/walk.h"

namespace design {

namespace {

/// Collects an entry of every key that a design names: the first of `from` that has it.
struct UsedParts {
    const catalog::Catalog& first;
    const catalog::Catalog& second;
    catalog::Catalog used = {};

    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) {}
    template <class Part>
    void operator()(const std::string&, catalog::PartRef<Part>& ref, const json::Allowed&) {
        if (ref.own || ref.key.empty()) return;
        if (const Part* entry = catalog::find(ref, first, second)) mapFor(*entry)[ref.key] = *entry;
    }

    auto& mapFor(const catalog::Sheet&) { return used.sheets; }
    auto& mapFor(const catalog::Alloy&) { return used.alloys; }
    auto& mapFor(const catalog::Wire&) { return used.wires; }
    auto& mapFor(const catalog::Bobbin&) { return used.bobbins; }
    auto& mapFor(const catalog::Insulation&) { return used.insulation; }
    auto& mapFor(const catalog::Fitting&) { return used.fittings; }
    auto& mapFor(const catalog::Sundry&) { return used.sundries; }
};

catalog::Catalog usedParts(const Design& d, const catalog::Catalog& first, const catalog::Catalog& second) {
    UsedParts parts{first, second};
    walk(d, parts);
    return std::move(parts.used);
}

}  // namespace

DesignPtr takeTodaysParts(const Design& d, const catalog::Catalog& shop) {
    return changed(d, [&](Design& copy) { copy.parts = usedParts(d, shop, d.parts); });
}

DesignPtr withStoredParts(const Design& d, const catalog::Catalog& shop) {
    return changed(d, [&](Design& copy) { copy.parts = usedParts(d, d.parts, shop); });
}

}  // namespace design
