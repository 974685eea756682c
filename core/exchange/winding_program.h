// SPDX-License-Identifier: GPL-3.0-or-later
// A planned coil as a program of ISO 6983-1 blocks.
#pragma once

#include <string>

#include "exchange/winding_plan.h"

namespace exchange {

/// The caution that stands at the head of every program and table and on every screen that shows one: a line each.
[[nodiscard]] std::vector<std::string> windingCaution();

/// The program. It carries the recipe and is for the shop only; its head says so, and gives the caution.
/// Every step begins with a main block (":", from which the machine may be restarted) after a comment that names its
/// step on the winding sheet. Throws units::BadInput if it has more blocks than the machine holds.
[[nodiscard]] std::string windingProgram(const WindingPlan& plan, const Winder& winder);

}  // namespace exchange
