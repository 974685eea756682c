// SPDX-License-Identifier: GPL-3.0-or-later
// Papers of single lots and units, with what is expected printed and room for what is found: first-article report,
// deviation permit, return report. Inside papers.
#pragma once

#include "analysis/answer.h"
#include "shop/form.h"

namespace shop {

/// Everything that is measured on the first unit of a revision: materials, coil, stack, outline, agreed limits.
[[nodiscard]] Form firstArticle(const design::Design& design, const catalog::Catalog& shop, const Issue& issue);

/// Leave to deliver a lot that is not as the papers say; `answer` (of the first hook-up) tells how much room each
/// promise has.
[[nodiscard]] Form deviationPermit(const design::Design& design, const analysis::Answer& answer, const Issue& issue);

/// What came back and why: what is looked at and measured, with the limits of a good unit.
[[nodiscard]] Form returnReport(const design::Design& design, const catalog::Catalog& shop, const Issue& issue);

}  // namespace shop
