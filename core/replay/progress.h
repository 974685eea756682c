// SPDX-License-Identifier: GPL-3.0-or-later
// What of a coil is wound at a point of a program, for showing it.
#pragma once

#include "replay/expected.h"
#include "replay/run.h"

namespace replay {

/// A point of a program.
struct Progress {
    int step = -1;       ///< the step that is being wound, from 0; -1: none is begun
    double turns = 0;    ///< of this step
    double seconds = 0;  ///< since the program began
    Guide guide;
    std::size_t event = 0;  ///< the block that is being run, counted in Run::events
};

/// The point `seconds` after the beginning: between the ends of a block turns and guide move in proportion to time,
/// as at even speed. Beyond the ends of the program: its ends. `run.events` must not be empty.
[[nodiscard]] Progress progressAt(const Run& run, double seconds);
/// The point behind event `index`, which is taken into the range there is.
[[nodiscard]] Progress progressBehind(const Run& run, std::size_t index);

/// The part of `build` on `leg` that the steps up to `progress` wind: layers whole, the last one as wide as its turns,
/// sheets of insulation and shields that lie beneath what is wound or are this step's own. Turns beyond those that the
/// step has in the design are not shown. The core, the bobbin and the room remain.
[[nodiscard]] coil::CoilBuild woundSoFar(const coil::CoilBuild& build, const Expected& expected,
                                         const Progress& progress, int leg);

}  // namespace replay
