// SPDX-License-Identifier: GPL-3.0-or-later
// One thing that an instrument reads at the terminals of a unit, and the scale in which readings are compared.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "design/design.h"
#include "units/kind.h"

namespace learn {

/// Standard uncertainties in a half width for 95 % (JCGM 100:2008, 6.2, from memory).
inline constexpr double coverage95 = 2;

/// Readings of one unit by the names of the plan's rows, in SI units; levels in dB. A ratio has a minus where the
/// phase is not the one that the plan states.
using Readings = std::map<std::string, double>;

/// Polarity belongs to a ratio: +1 as the design has it, -1 the other way round.
enum class ProbeKind {
    Resistance,
    Ratio,
    Polarity,
    Inductance,
    Leakage,
    Capacitance,
    Resonance,
    Gain,
    Response,
    Impedance,
    ImpedanceAngle
};

struct Probe {
    ProbeKind kind = ProbeKind::Resistance;
    std::string name;   ///< of the test plan's row: "dcr.P"
    std::string words;  ///< "DC resistance, primary (P)"
    units::Kind unit = units::Kind::Number;
    std::string a, b;         ///< windings or electrodes; of what is read in a hook-up, its name and the port
    double frequency = 0;     ///< Hz; of a resonance the least that is tried
    double until = 0;         ///< Hz; of a resonance the greatest
    double reference = 1000;  ///< Hz; of a response, where it counts as 0 dB
    design::HookUp hookUp;    ///< what is connected
    std::vector<design::Port> ports;
    double expected = 0;    ///< what the plan expects, SI; 0: nothing
    double floor = 0;       ///< below this a reading counts by difference, above it by ratio
    double instrument = 0;  ///< standard uncertainty, in the scale
    double model = 0;       ///< of the computation, likewise
    bool planned = true;    ///< a row of the plan; else a further reading that can be taken
    bool operator==(const Probe&) const = default;
};

/// Where differences are compared: levels in neper, degrees and polarity as they are; all else asinh(reading /
/// (2 floor)), which is the logarithm of what is far above the floor and goes through zero.
[[nodiscard]] double scaled(const Probe& probe, double reading) noexcept;
/// Back again.
[[nodiscard]] double unscaled(const Probe& probe, double value) noexcept;
/// d scaled / d reading.
[[nodiscard]] double slope(const Probe& probe, double reading) noexcept;

/// A unit in the fixture, good or faulty. Faults that a design cannot say stand beside it.
struct Unit {
    design::DesignPtr design;                      ///< its hook-ups are those that probes name
    std::vector<std::vector<std::string>> shorts;  ///< terminals that touch inside
    std::string shortedWinding;                    ///< whose turns these are
    double shortedShare = 0;                       ///< of its conductor's turns
    std::string openShield;                        ///< whose lead is not connected
};

}  // namespace learn
