// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/winding_steps.h"

#include <algorithm>
#include <cmath>

namespace coil {

std::vector<TapPoint> tapsInside(const design::Design& design, const design::Winding& winding,
                                 const design::Section& section) {
    double before = 0;
    if (winding.connection == design::Connection::Series)
        for (const auto* s : design::sectionsOf(design, winding)) {
            if (s->name == section.name) break;
            before += s->turns;
        }
    std::vector<TapPoint> inside;
    for (const auto& tap : winding.taps) {
        const double at = tap.turns - before;
        if (at > 0 && at <= section.turns) inside.push_back({at, tap.terminal});
    }
    std::sort(inside.begin(), inside.end(), [](const auto& a, const auto& b) { return a.turns < b.turns; });
    return inside;
}

int turnsThatFit(double width, double unit) noexcept {
    constexpr double rounding = 1e-9;  // a width of exactly n wires holds n
    if (!(unit > 0) || !(width > 0)) return 1;
    return std::max(1, static_cast<int>(std::floor(std::min(width / unit, 1e6) + rounding)));
}

AxialRoom stretch(const AxialRoom& room, design::End begins, double pitch, double done, double turns) noexcept {
    if (begins == design::End::Low) return {room.low + done * pitch, room.low + (done + turns) * pitch};
    return {room.high - (done + turns) * pitch, room.high - done * pitch};
}

}  // namespace coil
