// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/probe.h"

#include <cmath>

namespace learn {

namespace {

constexpr double decibelsOfNeper = 8.685889638065035;  // 20 / ln 10

bool isLevel(ProbeKind kind) {
    return kind == ProbeKind::Gain || kind == ProbeKind::Response;
}
bool isPlain(ProbeKind kind) {
    return kind == ProbeKind::ImpedanceAngle || kind == ProbeKind::Polarity;
}

}  // namespace

double scaled(const Probe& probe, double reading) noexcept {
    if (isLevel(probe.kind)) return reading / decibelsOfNeper;
    return isPlain(probe.kind) ? reading : std::asinh(reading / (2 * probe.floor));
}

double unscaled(const Probe& probe, double value) noexcept {
    if (isLevel(probe.kind)) return value * decibelsOfNeper;
    return isPlain(probe.kind) ? value : 2 * probe.floor * std::sinh(value);
}

double slope(const Probe& probe, double reading) noexcept {
    if (isLevel(probe.kind)) return 1 / decibelsOfNeper;
    return isPlain(probe.kind) ? 1 : 1 / std::hypot(reading, 2 * probe.floor);
}

}  // namespace learn
