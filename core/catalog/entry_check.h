// SPDX-License-Identifier: GPL-3.0-or-later
// What each kind of catalog entry must fulfil beyond the bounds of its single numbers.
#pragma once

#include <string>
#include <vector>

#include "catalog/alloy.h"
#include "catalog/bobbin.h"
#include "catalog/fitting.h"
#include "catalog/insulation.h"
#include "catalog/sheet.h"
#include "catalog/shop_tolerance.h"
#include "catalog/sundry.h"
#include "catalog/wire.h"
#include "units/fault.h"

namespace catalog {

/// Adds a fault for each thing that cannot be. `place` is the entry's place: "sheets.json: /entries/EI48". The same
/// checks serve catalog files and the entries that stand inside a design.
///
/// Sheet: a mean path of its own lies between the window's edge and the sheet's outline.
void check(const Sheet& sheet, const std::string& place, std::vector<units::Fault>& faults);
/// Alloy: the curve starts at [0, 0], rises strictly in field and flux and stays below saturation + mu0 H (within
/// 0.1 %); maximum permeability >= initial; remanence <= saturation. A number that is not known (0) is not checked.
void check(const Alloy& alloy, const std::string& place, std::vector<units::Fault>& faults);
/// Wire: bare <= smallest overall <= overall <= largest overall, as far as known.
void check(const Wire& wire, const std::string& place, std::vector<units::Fault>& faults);
/// Bobbin: at least one chamber; each chamber's low end below its high end; chambers in order and not overlapping;
/// pin numbers once each; a pin's row "low", "high" or none.
void check(const Bobbin& bobbin, const std::string& place, std::vector<units::Fault>& faults);
/// Insulation: a film or paper has stock thicknesses.
void check(const Insulation& insulation, const std::string& place, std::vector<units::Fault>& faults);
/// Fitting: walls leave room inside a can or cup; metal that may close a loop says how wide its strip is;
/// a bolt goes round nothing by itself.
void check(const Fitting& fitting, const std::string& place, std::vector<units::Fault>& faults);
/// Sundry: a lead has copper that its outside holds, sleeving a bore inside its outside, tape width and thickness.
void check(const Sundry& sundry, const std::string& place, std::vector<units::Fault>& faults);
/// Tolerance: its key is one of `toleranceKeys`; widths rise in size and are absolute; a discrete law has steps whose
/// shares add up to no more than 1, another law has none.
void check(const ShopTolerance& tolerance, const std::string& place, std::vector<units::Fault>& faults);

}  // namespace catalog
