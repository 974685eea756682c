// SPDX-License-Identifier: GPL-3.0-or-later
// Small pictures for the winder: the cut after a step, and the bobbin's pins.
#pragma once

#include "papers/paper.h"
#include "shop/winding_sheet.h"

namespace papers {

/// The window as it looks after step `step` (an index) of coil `leg`: what is new in its hue, what lay there before
/// pale; stretched across to fill `rect`. Filled circle: start, open circle: finish. The core's tongue is at the left,
/// the low flange below.
void paintCutStep(Paper& paper, const QRectF& rect, const shop::WindingSheet& sheet, int step, int leg);

/// The pins seen from below, the used ones filled, pin 1 square.
void paintBobbinPins(Paper& paper, const QRectF& rect, const shop::WindingSheet& sheet);

}  // namespace papers
