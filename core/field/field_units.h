// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <numbers>

namespace field {

/// H/m; 4 pi 1e-7 (CODATA 2018 differs by 5.5e-10).
inline constexpr double vacuumPermeability = 4e-7 * std::numbers::pi;

}  // namespace field
