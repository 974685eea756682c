// SPDX-License-Identifier: GPL-3.0-or-later
// What a paper says about characters that its type does not have.
#pragma once

#include "papers/paper.h"
#include "shop/words.h"

namespace papers {

/// "□ stands for a character …: U+4E2D." of all that the paper was asked for so far; empty if none is missing.
[[nodiscard]] QString missingCharacters(const Paper& paper, const shop::Words& say = {});

}  // namespace papers
