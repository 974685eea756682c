// SPDX-License-Identifier: GPL-3.0-or-later
// Stages of the computation laid open: for a designer who studies a window alone, and for comparison with other
// methods.
#pragma once

#include <string>

#include "analysis/answer.h"
#include "json/value.h"

namespace exchange {

/// Per layer: place, turns, turn length, resistance at 20 degrees; lambda between all layers (H per turn squared, twice
/// the field energy with +1 ampere-turn in one and -1 in the other) and the facing capacitances (F).
[[nodiscard]] json::Value layersJson(const analysis::Answer& answer);

/// Answers a question about a window or wire cells alone, in metres, x from the tongue:
/// {"w", "h", "ends": "closed" | "open", "sections": [{"x0", "x1", "y0", "y1", "turns"}]} gives "lambda_H_per_m" (per
/// turn squared) and "matrix_H_per_m" (with turns, gauge of the field function);
/// {"cells": [{"d", "d_o", "pitch", "sheet", "eps_enamel", "eps_sheet", "eps_filler", "nesting": "square" | "hex" |
/// "plane"}]} gives "capacitance_F_per_m2", one a cell ("square" and "hex": two equal rows; "plane": a row on a flat
/// conductor). Throws units::BadInput with every fault.
[[nodiscard]] json::Value fieldJson(std::string_view text, const std::string& file);

}  // namespace exchange
