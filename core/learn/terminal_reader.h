// SPDX-License-Identifier: GPL-3.0-or-later
// A unit read by its probes: its fields computed once, each hook-up solved at the frequencies asked for.
#pragma once

#include <vector>

#include "catalog/catalog.h"
#include "learn/probe.h"

namespace learn {

/// What instruments would show of a unit, in the order of the probes, in SI units (response, gain dB; angle degree);
/// not a number where it does not occur. Inductance is Im Z / omega at the terminals, capacitances included, as a meter
/// shows it; leakage the same at the first winding with the second shorted. Capacitances are those between conductors
/// with all others on guard; an open shield is on no guard, so that two conductors see each other through it, and
/// reads `openLead`. A resonance that is not found counts as at the highest frequency tried. Layers are cut into
/// `pieces`, or where these are not as many into two each. In the calling thread alone.
[[nodiscard]] std::vector<double> readings(const Unit& unit, const std::vector<Probe>& probes,
                                           const catalog::Catalog& shop, const std::vector<int>& pieces = {});

/// Pieces that the response of the design's hook-ups needs.
[[nodiscard]] std::vector<int> finePieces(const design::Design& design, const catalog::Catalog& shop);

/// What a meter shows on the lead of a shield that is not connected, F (common practice, no source).
inline constexpr double openLead = 2e-12;

}  // namespace learn
