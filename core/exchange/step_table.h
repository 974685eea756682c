// SPDX-License-Identifier: GPL-3.0-or-later
// A planned coil as a table of steps.
#pragma once

#include <string>

#include "exchange/winding_plan.h"

namespace exchange {

/// The plan as comma-separated text, for machines that take a table: a row a layer and a row a stop. The pitch is also
/// given as the machine rounds it, with the turns that then fit in the layer's width.
[[nodiscard]] std::string stepTable(const WindingPlan& plan, const Winder& winder);

}  // namespace exchange
