// SPDX-License-Identifier: GPL-3.0-or-later
// Single lines of the inside papers, as they are printed.
#pragma once

#include <string>

#include "shop/bill.h"
#include "shop/winding_sheet.h"

namespace shop {

/// "Measure P start to finish: 477 Ω (463 Ω to 501 Ω)".
[[nodiscard]] std::string checkWords(const ResistanceCheck& check);

/// The amount as people weigh and count it: 0.0123 kg "12.3 g", 0.01 m2 "100 cm²".
[[nodiscard]] std::string amountWords(const BillLine& line);

}  // namespace shop
