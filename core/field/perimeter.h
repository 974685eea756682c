// SPDX-License-Identifier: GPL-3.0-or-later
// Length of a turn as a function of the place in the window, for integrals over the window.
#pragma once

namespace field {

/// Turn length l(x) = atTongue + slope x, m, x from the tongue's surface. With a coil on each leg of a two-leg core it
/// rises from both sides to the window's middle, `mirrorAt` = w / 2 (0: not mirrored).
struct Perimeter {
    double atTongue = 1;
    double slope = 0;
    double mirrorAt = 0;

    [[nodiscard]] double at(double x) const noexcept {
        return atTongue + slope * (mirrorAt > 0 && x > mirrorAt ? 2 * mirrorAt - x : x);
    }
};

}  // namespace field
