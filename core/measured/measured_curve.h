// SPDX-License-Identifier: GPL-3.0-or-later
// One curve as it was measured.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace measured {

/// What a curve shows, each in one unit: response dB, phase degree, impedance ohm, its angle degree, distortion per
/// cent, noise volt per root hertz.
enum class CurveKind { Response, Phase, Impedance, ImpedanceAngle, Distortion, Noise };

struct MeasuredCurve {
    CurveKind kind = CurveKind::Response;
    std::string name;               ///< as its file calls it
    std::vector<double> frequency;  ///< Hz, rising
    std::vector<double> value;      ///< in the kind's unit
    bool operator==(const MeasuredCurve&) const = default;
};

/// "response", "phase", "impedance", "impedance angle", "distortion", "noise".
[[nodiscard]] std::string_view word(CurveKind kind) noexcept;
/// "dB", "deg", "ohm", "deg", "%", "V/rtHz".
[[nodiscard]] std::string_view unit(CurveKind kind) noexcept;

}  // namespace measured
