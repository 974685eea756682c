// SPDX-License-Identifier: GPL-3.0-or-later
// A resistor and a capacitor in series across the observed port, to tame the resonance at the top of the band.
#pragma once

#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"

namespace seek {

struct SeriesRC {
    double resistance = 0;   ///< ohm
    double capacitance = 0;  ///< F
};

/// The resistance with which a series RC across the capacitance C of a lossless L, C low-pass leaves the lowest peak,
/// n = C_d / C:
///     R = sqrt(L / C) sqrt((1 + n) (2 + n) / 2) / n,   |H|max = 1 + 2 / n  at  w^2 = 2 / ((2 + n) L C).
/// With R nothing and R without end the curves cross there, so that no R can go lower; R is that whose maximum lies
/// there. Derived here; it is the vibration absorber without a spring (J. P. Den Hartog, Mechanical Vibrations, from
/// memory: peak 1 + 2 / mu, damping 1 / sqrt(2 (1 + mu) (2 + mu))).
[[nodiscard]] SeriesRC closedFormDamping(double inductance, double capacitance, double n);

/// What the damping is for: the least greatest deviation from 1 kHz up to the resonance, or the least area between the
/// step and where it settles (integral of |s - 1| over the time of ten cycles of the resonance).
enum class DampingAim { Flat, CleanStep };

/// Deviation of a response or a step that a series RC leaves, to be made least.
using Deviation = std::function<double(const SeriesRC&)>;

/// Refines resistance and capacitance about `start` within a factor of 30 and 6, on logarithmic scales; the capacitance
/// stays as it is with `capacitanceHeld`.
[[nodiscard]] SeriesRC leastDeviation(const Deviation& deviation, const SeriesRC& start, bool capacitanceHeld,
                                      const std::stop_token& stop = {});

/// What damping does to one hook-up.
struct Damping {
    bool resonant = false;  ///< false: the response has no peak to tame, nothing below counts
    std::string hookUp, port;
    SeriesRC branch;
    double resonance = 0;                            ///< Hz, of the peak without
    double peakBefore = 0, peakAfter = 0;            ///< greatest level above 1 kHz, dB re 1 kHz
    double deviationBefore = 0, deviationAfter = 0;  ///< what was made least: dB, or s
    double highBefore = 0, highAfter = 0;            ///< -3 dB, Hz; 0: not below 1 MHz
};

/// The best series RC across the observed port of a hook-up ("" the first) of a checked design. The start is the closed
/// form with the leakage that the peak's frequency and the capacitance at the port make, n = 2.
[[nodiscard]] Damping damping(const design::Design& design, const catalog::Catalog& shop, const std::string& hookUp,
                              DampingAim aim, const std::stop_token& stop = {});

/// The design with that branch across the observed port of that hook-up.
[[nodiscard]] design::DesignPtr withDamping(const design::Design& design, const std::string& hookUp,
                                            const SeriesRC& branch);

}  // namespace seek
