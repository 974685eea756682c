// SPDX-License-Identifier: GPL-3.0-or-later
// Which window of a shell core half turns pass.
#pragma once

#include "coil/coil_build.h"

namespace coil {

/// Sets `oneSided` of every layer. Coils start at the terminals' face of the stack; every half turn ends at the other
/// face, so it passes one window of the two and half turns alternate between them: a section of n + 1/2 turns ends at
/// the back, and the section that goes on from there begins there. Terminals stand at the front.
void markHalfTurns(const design::Design& design, CoilBuild& build);

}  // namespace coil
