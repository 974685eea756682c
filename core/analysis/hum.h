// SPDX-License-Identifier: GPL-3.0-or-later
// What an outer magnetic field induces, and what a can keeps away.
#pragma once

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

/// Flux that a body of iron draws from a uniform field along its first axis, per tesla outside, m2: that of a solid
/// ellipsoid of the same overall size, mu / (1 + N (mu - 1)) times its middle section.
[[nodiscard]] double drawnFlux(double along, double second, double third, double permeability);

/// How a uniform field along the legs links a turn on each, per tesla outside, m2: the drawn flux shared out by the
/// sections of tongue and outer legs. On two legs it runs the same way in both, so in the sense of the core's own loop
/// the second counts against the first. Across the legs and square to the sheets nothing is linked, by symmetry: along
/// the legs is the worst axis.
struct LegFlux {
    double first = 0, second = 0;
};
[[nodiscard]] LegFlux legFlux(const coil::CoilBuild& build, const magnetics::CoreModel& core, double frequency);

}  // namespace analysis
