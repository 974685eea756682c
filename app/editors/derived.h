// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers that follow from a section or winding, shown beside the fields that make them.
#pragma once

#include <QString>

#include "analysis/answer.h"

namespace editors {

/// "5 layers of 154 turns, last 2 · build 0.70 mm · mean turn 59.3 mm · 277 Ω at 20 °C"; empty if the item is no
/// section.
[[nodiscard]] QString derivedOf(const analysis::Answer& answer, const design::ItemIndex& item);
/// The same of a whole winding: sections and layers, build, DCR between its ends, wire, share of the window; empty if
/// there is no such winding.
[[nodiscard]] QString derivedOf(const analysis::Answer& answer, const std::string& winding);

}  // namespace editors
