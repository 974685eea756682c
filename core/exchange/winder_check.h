// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a winder's description whose fields read well.
#pragma once

#include <string>
#include <vector>

#include "exchange/winder.h"

namespace exchange {

/// Adds every fault of `winder`, each located in `file`.
void checkWinder(const Winder& winder, const std::string& file, std::vector<units::Fault>& faults);

}  // namespace exchange
