// SPDX-License-Identifier: GPL-3.0-or-later
// How the turns of one section, or of sections wound in one hand, fall into layers.
#pragma once

#include <string>
#include <vector>

#include "coil/coil_build.h"

namespace coil {

/// Where a tap falls: turns from the section's first turn, and its terminal.
struct TapPoint {
    double turns = 0;
    std::string terminal;
};

/// The taps that fall strictly inside or at the end of a section, in rising order.
[[nodiscard]] std::vector<TapPoint> tapsInside(const design::Design& design, const design::Winding& winding,
                                               const design::Section& section);

/// Axial room of a section in its chamber.
struct AxialRoom {
    double low = 0, high = 0;
    [[nodiscard]] double width() const noexcept { return high - low; }
};

/// Turns that fit side by side, at least 1: floor(width / (unit pitchFactor)); check row G-T1.
[[nodiscard]] int turnsThatFit(double width, double unit) noexcept;

/// The stretch that `turns` turns take from where they begin, `done` turns after the layer's first.
[[nodiscard]] AxialRoom stretch(const AxialRoom& room, design::End begins, double pitch, double done,
                                double turns) noexcept;

}  // namespace coil
