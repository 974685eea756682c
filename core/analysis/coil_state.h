// SPDX-License-Identifier: GPL-3.0-or-later
// Ampere-turns and voltages of every layer: what the ladders beside the sections of the cut show.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// Frequency at which layers are read, Hz: the core's share of the current is small, and capacitances take little yet.
inline constexpr double layerFrequency = 1e3;

/// One layer of the build.
struct LayerState {
    double ampereTurns =
        0;  ///< A for 1 A into the driven port, observed port shorted; the driven winding's are positive
    double startVolts = 0;  ///< V to earth at its first turn, for 1 V across the driven port; NaN where there is none
    double finishVolts = 0;
};

/// Every layer in one hook-up.
struct CoilState {
    std::string hookUp, driven, observed;  ///< hook-up and ports
    std::vector<LayerState> layers;        ///< by index of the build's layers
    std::vector<double> foilVolts;         ///< by index of the build's shields, V
    std::string why;                       ///< why there is nothing to show; "" where there is
    [[nodiscard]] bool known() const { return why.empty(); }
};

/// Of the design's first hook-up, from the same network as its figures. Ampere-turns: branch currents times turns with
/// the observed port shorted, so that they balance but for the core's share; no load counts. They are what
/// the leakage field between the two ports is made of. Voltages: real parts with everything connected as the
/// hook-up says, referred to the driven port's (a common drive's: to its EMF).
[[nodiscard]] CoilState coilState(const design::Design& design, const Answer& answer);

}  // namespace analysis
