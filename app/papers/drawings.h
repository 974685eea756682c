// SPDX-License-Identifier: GPL-3.0-or-later
// The drawings of a datasheet: the circuit, and the outline with its pins.
#pragma once

#include "papers/paper.h"
#include "shop/datasheet.h"

namespace papers {

/// Windings with phase dots, core, shields, terminals and earths (IEC 60617 manner), driven windings on the left.
/// `core`: what the core is called.
/// Height that a circuit needs at least, in millimetres, for its names to stand apart.
[[nodiscard]] double schematicRoom(const shop::Schematic& schematic);
void paintSchematic(Paper& paper, const QRectF& rect, const shop::Schematic& schematic, const QString& core);

/// Pins seen from below and the side, to one scale, with dimensions (ISO 129 manner).
void paintOutline(Paper& paper, const QRectF& rect, const shop::Outline& outline, const shop::Manner& manner);

}  // namespace papers
