// SPDX-License-Identifier: GPL-3.0-or-later
// The foot of every page: what the paper is about, and which page of it.
#pragma once

#include "papers/paper.h"
#include "shop/paper_head.h"

namespace papers {

inline constexpr double footHeight = 13;  ///< mm

/// Draws name, part, revision, date, digest, page and square code at the foot of the page.
void paintTitleBlock(Paper& paper, const shop::PaperHead& head, int pages);

}  // namespace papers
