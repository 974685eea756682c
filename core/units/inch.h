// SPDX-License-Identifier: GPL-3.0-or-later
// The inch, for those who lay out paper in millimetres and points.
#pragma once

namespace units {

inline constexpr double millimetresPerInch = 25.4;  ///< exact by definition (international inch)

}  // namespace units
