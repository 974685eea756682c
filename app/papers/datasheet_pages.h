// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of a datasheet: pinout, limits and outline on the first, curves and notes on the second.
#pragma once

#include "papers/paper.h"
#include "shop/datasheet.h"

namespace papers {

/// Paints the pages, each saying that there are `pages` of them; returns how many there are. More than two only where
/// tables are too long for the first.
int paintDatasheetPages(Paper& paper, const shop::Datasheet& sheet, int pages);

}  // namespace papers
