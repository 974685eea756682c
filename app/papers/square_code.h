// SPDX-License-Identifier: GPL-3.0-or-later
// A QR code (ISO/IEC 18004) as vector squares.
#pragma once

#include "papers/paper.h"

namespace papers {

/// Draws `words` as a code in the middle of `rect`, with the quiet zone of four modules inside it. Draws nothing where
/// the words do not fit into any code.
void paintSquareCode(Paper& paper, const QRectF& rect, const std::string& words);

}  // namespace papers
