// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/measured_curve.h"

#include <array>
#include <cstddef>
#include <utility>

namespace measured {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kinds{{{"response", "dB"},
                                                                              {"phase", "deg"},
                                                                              {"impedance", "ohm"},
                                                                              {"impedance angle", "deg"},
                                                                              {"distortion", "%"},
                                                                              {"noise", "V/rtHz"}}};

}  // namespace

std::string_view word(CurveKind kind) noexcept {
    return kinds[static_cast<std::size_t>(kind)].first;
}

std::string_view unit(CurveKind kind) noexcept {
    return kinds[static_cast<std::size_t>(kind)].second;
}

}  // namespace measured
