// SPDX-License-Identifier: GPL-3.0-or-later
// A planned step cut into strokes: stretches of turns at one speed and one pitch.
#pragma once

#include <vector>

#include "exchange/winding_plan.h"

namespace exchange {

/// Turns that are wound without a change of anything.
struct Stroke {
    double first = 0, turns = 0;  ///< as the machine counts them: whole multiples of its last digit
    double from = 0, to = 0;      ///< guide, m
    double depth = 0;             ///< of the guide, m
    double pitch = 0;             ///< of the guide's move, m; 0: it stands
    int layer = 1;                ///< from 1
    int rpm = 0;
    bool rests = false;  ///< the spindle stands before the first turn
};

/// The strokes of a step: a slow start, the layer, a slow last turn during which the guide stands; cut where a stop
/// falls. Turn counts are differences of rounded sums, so that they add up to the step's turns. Speed: the least of the
/// spindle's limit, the wire's and the traverse's, and never more than what the drive can slow down from before it has
/// to stand (v^2 = 2 a n). `rests` is set after a stop and where the next layer begins elsewhere than this one ended.
[[nodiscard]] std::vector<Stroke> strokes(const PlannedStep& step, const Winder& winder);

/// `turns` as the machine counts them.
[[nodiscard]] double counted(double turns, const Winder& winder);

}  // namespace exchange
