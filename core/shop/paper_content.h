// SPDX-License-Identifier: GPL-3.0-or-later
// The content of the papers of the shop as JSON values.
#pragma once

#include "json/value.h"
#include "shop/bill.h"
#include "shop/datasheet.h"
#include "shop/quotation.h"
#include "shop/test_plan.h"
#include "shop/traveller.h"
#include "shop/winding_sheet.h"

namespace shop {

/// Everything that the paper says, lengths in m, masses in kg, resistances in ohm.
[[nodiscard]] json::Value contentOf(const WindingSheet& sheet);
[[nodiscard]] json::Value contentOf(const Traveller& traveller);
[[nodiscard]] json::Value contentOf(const Bill& bill);
[[nodiscard]] json::Value contentOf(const Form& form);
[[nodiscard]] json::Value contentOf(const Quotation& quotation);
[[nodiscard]] json::Value contentOf(const Datasheet& sheet);
/// SI units; distortion as a share.
[[nodiscard]] json::Value contentOf(const TestPlan& plan);

}  // namespace shop
