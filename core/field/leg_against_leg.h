// SPDX-License-Identifier: GPL-3.0-or-later
// What the ampere-turns of one leg against those of the other have beyond the window of a two-leg core.
#pragma once

#include <array>

#include "coil/coil_build.h"

namespace field {

/// Inductance over mu0 beyond the window with one ampere-turn on each leg against the other.
struct LegAgainstLeg {
    /// m, of thin coils over the whole legs: the field in space of `yokeToYoke` less that in the window.
    double inSpace = 0;
    /// Per leg, to be added to `imageMatrix` (logarithm's unit `unit`) of its layers: makes the mean of the leg's true
    /// turns, per metre, what it has more than such a thin coil. A matter of the leg's neighbourhood, from plane
    /// problems (`aroundBlock`): the outer side before the whole core's outline, the stack faces before the stack's.
    std::array<double, 2> perMetre{0, 0};
};

/// `within`: part of each turn within the window, m. Yoke and second leg of unknown width are taken as wide as the leg.
[[nodiscard]] LegAgainstLeg legAgainstLeg(const coil::CoilBuild& build, double within, double unit);

}  // namespace field
