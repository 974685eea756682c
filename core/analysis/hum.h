// SPDX-License-Identifier: GPL-3.0-or-later
// What an outer magnetic field induces, and what a can keeps away.
#pragma once

#include <optional>
#include <vector>

#include "analysis/stages.h"

namespace analysis {

/// Field outside over field inside of closed spherical shells of permeability, from the inside out, in a uniform steady
/// field; exact for any thickness and number. In each region the scalar potential is (A r + B / r^2) cos(theta), A r +
/// B / r^2 and mu (A - 2 B / r^3) pass every surface; outside over inside is A_out / A_in (textbook, Laplace's
/// equation; re-derived). One shell: ((2 mu + 1)(mu + 2) - 2 (a/b)^3 (mu - 1)^2) / (9 mu) (J. D. Jackson, Classical
/// Electrodynamics, 5.12, from memory); thin ones: 1 + 4/3 mu d / D. Eddy currents, which help, are left out; a lid's
/// gap and strained sheet let in more: an upper bound. Shells must not overlap.
struct Shell {
    double innerRadius = 0, outerRadius = 0;  ///< m
    double permeability = 1;                  ///< relative
};
[[nodiscard]] double shellScreening(const std::vector<Shell>& shells);
/// The shells of a design's cans.
[[nodiscard]] std::vector<Shell> shellsOf(const design::Core& core);

/// Demagnetising factor of an ellipsoid along its first semi-axis:
///     N = (a b c / 2) integral from 0 to infinity of ds / ((s + a^2) sqrt((s + a^2)(s + b^2)(s + c^2)))
/// (J. A. Osborn, Phys. Rev. 67, 1945; E. C. Stoner, Phil. Mag. 36, 1945; from memory). All above 0. The three add up
/// to 1.
[[nodiscard]] double demagnetisingFactor(double along, double second, double third);

/// Flux that an ellipsoid of iron draws from a uniform field along its first semi-axis, per tesla outside, m2: mu / (1
/// + N (mu - 1)) times its middle section.
[[nodiscard]] double drawnFlux(double along, double second, double third, double permeability);

/// Relative permeability of a core with its joints, from the inductance of a turn; at least 1.
[[nodiscard]] double fieldPermeability(const magnetics::CoreModel& core, double frequency);

/// How a uniform field along the legs links a turn on each, per tesla outside, m2, mean over the window's height: the
/// flux of an ellipsoid of the core's outline, its proportions and its volume, shared out by the sections of tongue and
/// outer legs. Within 9 % (0.8 dB) of finite elements on shell and two-leg cores (tests/references/core_in_field.json).
/// On two legs it runs the same way in both, so in the sense of the core's own loop the second counts against the
/// first. Across the legs and square to the sheets nothing is linked, by symmetry: along the legs is the worst axis.
struct LegFlux {
    double first = 0, second = 0;
};
[[nodiscard]] LegFlux legFlux(const coil::CoilBuild& build, double permeability);

/// Voltage at the observed terminals that turns on either leg pick up in that field, V/T, each counted as if the flux
/// went round the core: what is left is the difference. Equal coils on equal legs leave nothing; n1 and n2 turns in
/// series (n1 - n2) of (n1 + n2).
struct HumPickup {
    network::Complex first = 0, second = 0;
    [[nodiscard]] double apart() const;  ///< of both added
    [[nodiscard]] double left() const;
};
/// Nothing where no port is observed, or it is shorted.
[[nodiscard]] std::optional<HumPickup> humPickup(const Solved& solved, const Answer::Stages& stages, double frequency);

}  // namespace analysis
