// SPDX-License-Identifier: GPL-3.0-or-later
// A program run on a kinematic model of a machine: what it winds, where it stops, how long it takes.
// Positions in m in the coil's coordinates: traverse from the window's lower wall, depth from the tongue's surface.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "replay/machine.h"
#include "replay/program.h"

namespace replay {

inline constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

/// Where the guide stands; NaN where the machine has no such axis or no block has said it yet.
struct Guide {
    double traverse = unknown, depth = unknown, cross = unknown;
};

/// Turns wound by one block.
struct Stretch {
    int line = 0, step = 0;       ///< step: main blocks before it, less one
    double first = 0, turns = 0;  ///< turns of the step before; turns
    Guide from, to;
    int sense = 0;  ///< +1 clockwise, -1 counterclockwise
    double rpm = 0;
    bool stands = false;  ///< the spindle stands before
    double seconds = 0;
};

/// A stop for the operator.
struct Halt {
    int line = 0, step = 0;
    double after = 0;  ///< turns of the step before
    std::string kind;  ///< "paper", …; "" where no reason is given
    double seconds = 0;
};

/// Wire wrapped round a pin.
struct Wrap {
    int line = 0, step = 0;
    double after = 0;
    Guide at;
    int wraps = 0;
};

/// A rapid move.
struct Move {
    int line = 0;
    Guide from, to;
};

/// Something that the machine would not do, or should not.
struct Remark {
    int line = 0;
    std::string words;  ///< one sentence without its full stop
};

/// What one block does, for stepping through a program.
struct Event {
    int line = 0, step = 0;
    double turns = 0;    ///< of the step, behind the block
    double seconds = 0;  ///< since the program began, behind the block
    Guide guide;
};

struct Run {
    std::vector<Stretch> stretches;
    std::vector<Halt> halts;
    std::vector<Wrap> wraps;
    std::vector<Move> moves;
    std::vector<Remark> remarks;
    std::vector<Event> events;  ///< a block each
    std::vector<int> stepLines;
    int blocks = 0;
    double moving = 0, waiting = 0;  ///< s: winding and moves; stops and wraps
    [[nodiscard]] double turns() const;
    /// Time from bobbin to bobbin, s, with loading.
    [[nodiscard]] double cycle(const Machine& machine) const;
    /// Whole units in a day's shift, all spindles together.
    [[nodiscard]] int unitsADay(const Machine& machine) const;
};

/// Runs every block. Each stretch of turns is wound at its speed, reached and left at the drive's acceleration
/// (v^2 = u^2 + 2 a n); the spindle stands at stops, rapid moves and where a block says so. Remarks: more blocks than
/// the machine holds, a place, speed or tension beyond its limits, a speed that cannot be left in the turns there are,
/// a pitch that does not agree with turns and move, turns without a sense, moves with the spindle turning, no end.
/// Throws units::BadInput for a letter or code that the machine does not know, with the line.
[[nodiscard]] Run run(const Program& program, const Machine& machine);

}  // namespace replay
