// SPDX-License-Identifier: GPL-3.0-or-later
// A measured unit with what a hook-up hangs on its ports.
#pragma once

#include "design/hook_up.h"
#include "measured/measured_curve.h"
#include "measured/network_data.h"

namespace measured {

/// What the design's own traces of response and impedance say, of measured network parameters.
struct TerminatedUnit {
    std::vector<MeasuredCurve> curves;  ///< response, its phase; impedance at the port asked for and its angle
};

/// Solves the ports' law of `data` together with each port's sources, impedances and parts across, as `hookUp` has
/// them. Ports of `data` stand in the hook-up's order: one for each of its ports, plus against minus, and two for a
/// balanced one, plus against earth and minus against earth (as `exchange::touchstone` writes them). `impedanceAt` is a
/// port's name; "" the driven one. A frequency of 0 is left out. Throws units::BadInput, place `file`, if the numbers
/// of ports do not agree or there is no such port.
[[nodiscard]] TerminatedUnit terminated(const NetworkData& data, const design::HookUp& hookUp,
                                        const std::string& impedanceAt, const std::string& file);

}  // namespace measured
