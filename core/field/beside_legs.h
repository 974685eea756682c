// SPDX-License-Identifier: GPL-3.0-or-later
// The field of two coils on opposite sides of a core, outside it: what the ampere-turns of one leg against those of the
// other cost beyond the window.
#pragma once

#include <vector>

#include "coil/coil_build.h"

namespace field {

/// Cross-section of a core seen from outside: a rectangle of iron of infinite permeability, coordinates as in a window:
/// x outward from the right face, y from the lower wall of the window.
struct IronBlock {
    double width = 0;             ///< m, across
    double below = 0, above = 0;  ///< lower and upper face, m
    bool operator==(const IronBlock&) const = default;
};

/// Boxes with one ampere between them (`share` of it in each, adding up to 1) on the right face and the same against it
/// on the left: inductance per metre and mu0 of one side, the other side's flux included, less that of the boxes before
/// an endless iron plane with the logarithm's unit `unit` (`imageMatrix`): what turns that matrix into the true one.
///
/// Method: the plane's images are kept as source, the rest is a single layer on the block's outline with Neumann's
/// condition (iron: no field along it), straight panels graded towards the corners, collocated at their middles (any
/// text on boundary elements). Against finite elements: tests/references/legs.json, within 0.3 %.
[[nodiscard]] double aroundBlock(const IronBlock& block, const std::vector<coil::Box>& boxes,
                                 const std::vector<double>& share, double unit);

}  // namespace field
