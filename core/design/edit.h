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
/// turns): the first keeps its name, the second gets the next free letter; series order kept. Fewer than two turns, or
/// a winding whose sections are in parallel: nothing changes.
[[nodiscard]] DesignPtr splitSection(const Design& d, ItemIndex section);
/// Joins a section with the next section of the same winding in the same place, dropping the barriers between. Nothing
/// changes where a shield or another winding lies between, where the two do not follow each other in series in the same
/// sense, or where a terminal comes out between them.
[[nodiscard]] DesignPtr joinSection(const Design& d, ItemIndex section);
/// Inserts an item before position `at`; removes the item `at`. A section new to a winding with an explicit order comes
/// last in it; a shield that is removed leaves the straps and earths that name it.
[[nodiscard]] DesignPtr insertItem(const Design& d, ItemIndex at, Item item);
[[nodiscard]] DesignPtr removeItem(const Design& d, ItemIndex at);
/// Takes a terminal or shield that is gone, or not reached, out of the straps and earths that name it.
void forgetNode(HookUp& hookUp, const std::string& node);
/// Swaps the terminals of a winding's start and finish: its polarity turns round, and the start comes out where the
/// finish did. Taps stay where they are on the conductor.
[[nodiscard]] DesignPtr swapEnds(const Design& d, const std::string& winding);
/// The other end of a port becomes the hot one in a hook-up: what earthed or strapped one of its ends to shields, core
/// or earth now does so at the other, and "minus-earthed" becomes "plus-earthed" and back. Straps between windings stay
/// as they are, plus stays plus. Nothing changes where neither end has such a tie.
[[nodiscard]] DesignPtr otherEndHot(const Design& d, const std::string& hookUp, const std::string& port);
/// Adds a winding to begin with: "S", or "S2", "S3"… where that is taken, of the last winding's conductor and turns, as
/// one section at the outside of the first place with a copy of the outermost barrier, ends at terminals of their own
/// (the lowest pins that are free, leads where the bobbin has no more) and a port of its own name, which no hook-up
/// uses yet. A design without windings stays as it is.
[[nodiscard]] DesignPtr addWinding(const Design& d, const catalog::Catalog& shop);
/// Takes a winding out with all that names it: sections, each with one barrier beside it, terminals that nothing else
/// is soldered to, ports at its ends and their places in hook-ups, direct currents, promises and masks. A name that no
/// winding has, or the only one's, changes nothing.
[[nodiscard]] DesignPtr removeWinding(const Design& d, const std::string& winding);
/// Replaces the design's copies of catalog entries by today's of the shop.
[[nodiscard]] DesignPtr takeTodaysParts(const Design& d, const catalog::Catalog& shop);
/// Adds copies of all entries used that are not yet in `parts`, and drops copies no longer used: what saving writes.
[[nodiscard]] DesignPtr withStoredParts(const Design& d, const catalog::Catalog& shop);

}  // namespace design
