// SPDX-License-Identifier: GPL-3.0-or-later
// What holds and houses a unit, and what its ends are brought out and wrapped with.
#pragma once

#include "catalog/catalog.h"
#include "catalog/parts.h"

namespace design {

/// A fitting that goes on a unit.
struct FittingUse {
    catalog::PartRef<catalog::Fitting> fitting;
    int count = 1;
    bool insulated = false;  ///< a bush, washer or gap breaks every loop that its metal could close
    json::Value extra = nullptr;
    bool operator==(const FittingUse&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, FittingUse& f) {
    visit.need("fitting", f.fitting);
    visit.may("count", f.count, json::within(1, 100));
    visit.may("insulated", f.insulated);
}

/// What is cut off reels for a unit; empty: what the shop has.
struct Sundries {
    catalog::PartRef<catalog::Sundry> lead;      ///< of every terminal that is a lead
    catalog::PartRef<catalog::Sundry> sleeving;  ///< on ends that are brought out
    catalog::PartRef<catalog::Sundry> tape;      ///< round ends and finished coils
    json::Value extra = nullptr;
    bool operator==(const Sundries&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Sundries& s) {
    visit.may("lead", s.lead);
    visit.may("sleeving", s.sleeving);
    visit.may("tape", s.tape);
}

}  // namespace design
