// SPDX-License-Identifier: GPL-3.0-or-later
// The wire of one winding.
#pragma once

#include "coil/coil_build.h"

namespace analysis {

/// Resistance at the design's temperature, ohm, length, m, and mass, kg, of one winding: sections in series add, in
/// parallel their conductances add.
struct Copper {
    double resistance = 0, length = 0, mass = 0;
};
[[nodiscard]] Copper copperOf(const design::Design& design, const coil::CoilBuild& build,
                              const design::Winding& winding);

}  // namespace analysis
