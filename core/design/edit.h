// SPDX-License-Identifier: GPL-3.0-or-later
// Edits: each returns another design and leaves the given one alone.
#pragma once

#include <functional>
#include <string>

#include "design/design.h"

namespace design {

/// A changed copy.
template <class Change>
[[nodiscard]] DesignPtr changed(const Design& d, Change&& change) {
    auto copy = std::make_shared<Design>(d);
    change(*copy);
    return copy;
}

/// Moves an item to stand before position `to` of a place's order (its length: at the outside). The electrical order of
/// every winding stays as it was. Moving next to itself changes nothing.
[[nodiscard]] DesignPtr moveItem(const Design& d, ItemIndex from, ItemIndex to);
/// Moves an item one step outward (+1) or inward (-1) within its place; at the end nothing changes.
[[nodiscard]] DesignPtr stepItem(const Design& d, ItemIndex item, int step);
/// Splits a section into two next to each other with a copy of the turns shared out (first part rounded down to whole
/// turns); names are the next free letters; series order kept.
[[nodiscard]] DesignPtr splitSection(const Design& d, ItemIndex section);
/// Joins a section with the next section of the same winding in the same place, dropping what lies between.
[[nodiscard]] DesignPtr joinSection(const Design& d, ItemIndex section);
/// Inserts an item before position `at`; removes the item `at`.
[[nodiscard]] DesignPtr insertItem(const Design& d, ItemIndex at, Item item);
[[nodiscard]] DesignPtr removeItem(const Design& d, ItemIndex at);
/// The other end of a winding becomes the hot one: swaps start and finish terminals of the winding.
[[nodiscard]] DesignPtr swapEnds(const Design& d, const std::string& winding);
/// Replaces the design's copies of catalog entries by today's of the shop.
[[nodiscard]] DesignPtr takeTodaysParts(const Design& d, const catalog::Catalog& shop);
/// Adds copies of all entries used that are not yet in `parts`, and drops copies no longer used: what saving writes.
[[nodiscard]] DesignPtr withStoredParts(const Design& d, const catalog::Catalog& shop);

}  // namespace design
