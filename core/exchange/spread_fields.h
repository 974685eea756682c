// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of fields of what a part of a spread carries; included by spread_part.cpp and spread_json.cpp alone.
#pragma once

#include "json/record.h"
#include "spread/summary.h"

namespace analysis {

template <class Visitor>
void fields(Visitor& visit, Column& c) {
    visit.need("name", c.name);
    visit.may("text", c.text);
    visit.may("unit", c.unit);
    visit.may("promise", c.promise, json::within(-1, 1e6));
    visit.may("mask", c.mask);
    visit.may("nominal", c.nominal);
}

}  // namespace analysis

namespace spread {

template <class Visitor>
void fields(Visitor& visit, Law& l) {
    visit.need("distribution", l.kind);
    visit.may("plus_minus", l.halfWidth, json::within(0, 1e12));
    visit.may("relative", l.relative);
    visit.may("steps", l.steps);
}

template <class Visitor>
void fields(Visitor& visit, Varying& v) {
    visit.need("name", v.name);
    visit.need("place", v.place);
    visit.need("nominal", v.nominal);
    visit.need("law", v.law);
    visit.may("lot_share", v.lotShare, json::within(0, 1));
    visit.may("lot", v.lot);
    visit.may("source", v.source);
    visit.may("status", v.status);
}

/// Whole numbers that a double can count.
inline constexpr double mostCounted = 9007199254740992.0;

template <class Visitor>
void fields(Visitor& visit, Expansion& e) {
    visit.need("units", e.units, json::within(0, mostCounted));
    visit.may("worst", e.worst, json::within(-1, 1e300));
}

template <class Visitor>
void fields(Visitor& visit, Head& h) {
    visit.need("design", h.design);
    visit.need("digest", h.designDigest);
    visit.need("program", h.program);
    visit.need("units", h.units, json::within(1, mostCounted));
    visit.need("seed", h.seed, json::within(0, mostCounted));
    visit.need("lot_size", h.lotSize, json::within(1, mostCounted));
    visit.need("columns", h.columns);
    visit.need("at_least", h.atLeast);
    visit.need("at_most", h.atMost);
    visit.need("varying", h.varying);
    visit.need("frequencies", h.frequencies, json::aboveUpTo(0, 1e9).in("Hz"));
    visit.need("expansion", h.expansion);
}

}  // namespace spread
