// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/probe.h"

#include <cmath>

namespace learn {

namespace {

bool isPlain(ProbeKind kind) {
    return kind == ProbeKind::Gain || kind == ProbeKind::Response || kind == ProbeKind::ImpedanceAngle ||
           kind == ProbeKind::Polarity;
}

}  // namespace

double scaled(const Probe& probe, double reading) noexcept {
    return isPlain(probe.kind) ? reading : std::asinh(reading / (2 * probe.floor));
}

double unscaled(const Probe& probe, double value) noexcept {
    return isPlain(probe.kind) ? value : 2 * probe.floor * std::sinh(value);
}

double slope(const Probe& probe, double reading) noexcept {
    return isPlain(probe.kind) ? 1 : 1 / std::hypot(reading, 2 * probe.floor);
}

}  // namespace learn
