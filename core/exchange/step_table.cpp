// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/step_table.h"

#include <algorithm>
#include <cmath>

#include "exchange/block_writer.h"
#include "exchange/winding_program.h"
#include "exchange/winding_strokes.h"
#include "units/csv_cell.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using units::joined;

/// One row of the step table for a layer.
std::string layerRow(const PlannedStep& step, const PlannedLayer& layer, std::size_t number, const Winder& w) {
    const double scale = std::pow(10.0, w.pitchDecimals);
    const double rounded = std::round(inProgramUnit(layer.pitch, w) * scale) / scale;
    const double width = layer.high - layer.low;
    // What the machine's own pitch makes of the width: whole turns that lie side by side in it.
    const double fits = rounded > 0 ? std::floor(inProgramUnit(width, w) / rounded + 1e-9) : layer.turns;
    int rpm = 0;
    for (const Stroke& stroke : strokes(step, w))
        if (stroke.layer == static_cast<int>(number)) rpm = std::max(rpm, stroke.rpm);
    return joined({coil::stepNumber(step.item),
                   ",",
                   units::csvCell(step.title),
                   ",",
                   std::to_string(number),
                   ",",
                   units::shortest(counted(layer.turns, w)),
                   ",",
                   units::significant(inProgramUnit(width, w), 6),
                   ",",
                   units::significant(inProgramUnit(layer.pitch, w), 6),
                   ",",
                   layer.still ? "" : units::shortest(rounded),
                   ",",
                   layer.still ? "" : units::shortest(fits),
                   ",",
                   layer.fromLow ? "low to high" : "high to low",
                   ",",
                   step.reversed ? "counterclockwise" : "clockwise",
                   ",",
                   w.spindle.letter.empty() ? "" : std::to_string(rpm),
                   ",,\n"});
}

}  // namespace

std::string stepTable(const WindingPlan& plan, const Winder& winder) {
    const std::string unit = winder.unit == ProgramUnit::Inch ? "in" : "mm";
    std::string text;
    for (const std::string& line : windingCaution()) text += joined({"# ", line, "\n"});
    text += joined({"# inside paper, carries the winding recipe, not for customers: ", plan.design, ", revision ",
                    plan.revision, ", coil ", std::to_string(plan.leg), " of ", std::to_string(plan.legs), "\n"});
    text += joined({"step,section,layer,turns,width_", unit, ",pitch_", unit, ",pitch_rounded_", unit,
                    ",turns_at_rounded_pitch,direction,sense,speed_rpm,stop,message\n"});
    for (const auto& step : plan.steps) {
        std::size_t next = 0;
        const auto stopsUpTo = [&](double turns, bool opening) {
            for (; next < step.stops.size(); ++next) {
                const auto& stop = step.stops[next];
                if (opening ? !stop.opening : stop.after > turns + 1e-9) break;
                text += joined({coil::stepNumber(step.item), ",", units::csvCell(step.title), ",,",
                                units::shortest(counted(stop.after, winder)), ",,,,,,,,", stopName(stop.kind), ",",
                                units::csvCell(stop.words), "\n"});
            }
        };
        stopsUpTo(0, true);
        for (std::size_t n = 0; n < step.layers.size(); ++n) {
            text += layerRow(step, step.layers[n], n + 1, winder);
            stopsUpTo(step.layers[n].first + step.layers[n].turns, false);
        }
    }
    return text;
}

}  // namespace exchange
