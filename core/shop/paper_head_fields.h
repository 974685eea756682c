// SPDX-License-Identifier: GPL-3.0-or-later
// What every paper's content has in common. For the room's own sources.
#pragma once

#include "json/record.h"
#include "shop/paper_head.h"

namespace shop {

template <class Visitor>
void fields(Visitor& visit, PaperHead& r) {
    visit.need("paper", r.paper);
    visit.need("title", r.title);
    visit.need("part_number", r.partNumber);
    visit.need("revision", r.revision);
    visit.need("date", r.date);
    visit.need("digest", r.digest);
}
template <class Visitor>
void fields(Visitor& visit, Fact& r) {
    visit.need("what", r.what);
    visit.need("words", r.words);
}

}  // namespace shop
