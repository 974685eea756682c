// SPDX-License-Identifier: GPL-3.0-or-later
// How much a reader tells.
#pragma once

#include <cstddef>

namespace units {

/// Faults of one file after which its reader looks for no others.
inline constexpr std::size_t mostFaults = 1000;

}  // namespace units
