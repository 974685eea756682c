// SPDX-License-Identifier: GPL-3.0-or-later
// The stack as one magnetic path: sheets of one or several alloys in parallel, with joints.
#pragma once

#include <complex>
#include <string>
#include <vector>

#include "design/design.h"

namespace magnetics {

/// The sheets of one alloy within the stack, resolved from the catalog.
struct StackBlock {
    std::string alloy;  ///< for people
    double share = 1;
    double thickness = 0;            ///< of a sheet, m
    double initialPermeability = 1;  ///< with the design's factor
    double resistivity = 0;          ///< ohm m
    double saturation = 0;           ///< T
    double rayleigh = 0;             ///< m/A, 0 unknown
    double coercivity = 0;           ///< A/m, 0 unknown
    double remanence = 0;            ///< T, 0 unknown
    std::vector<catalog::BhPoint> curve;
    bool operator==(const StackBlock&) const = default;
};

/// The core as the network sees it.
struct CoreModel {
    double area = 0;        ///< iron section of the tongue or leg: width x height x stacking factor, m2
    double pathLength = 0;  ///< m
    double outerArea = 0;   ///< shell: iron section of both outer legs together, m2
    double outerPath = 0;   ///< shell: part of the path from the tongue's one end round an outer leg to the other, m
    double gap = 0;         ///< total air in the path with fringing divided out, m
    double fringing = 1;    ///< factor that was applied
    double lapBreak = 0;    ///< of interleaved joints: total air between the ends of sheets that meet, m; else 0
    double lapLength = 0;   ///< of interleaved joints: total path in neighbours that bridge those breaks, m
    std::vector<StackBlock> blocks;
    bool valid = true;
    std::string why;  ///< "alternating sheets are computed as parallel paths", …
    bool operator==(const CoreModel&) const = default;
};
/// The design's core resolved against its own copies and the catalog. Two legs: section of one leg, the whole path. A
/// gap of butt joints fringes, the effective gap of interleaved ones does not. A block's permeability factor acts on
/// its curve too: the same flux density at 1/factor of the field. Blocks of share 0 and parts not found are left out
/// (the latter, and alternating sheets of different alloys, make it not `valid`). Interleaved joints with an effective
/// gap are bridged by neighbouring sheets: 2 breaks of 10 um, each bridged over 1 mm (common practice, no source).
[[nodiscard]] CoreModel coreModel(const design::Design& design, const catalog::Catalog& shop);

/// Effective relative permeability of a path with an air gap: mu_e = mu / (1 + mu g / l); complex mu inside.
[[nodiscard]] std::complex<double> gappedPermeability(std::complex<double> permeability, double gap,
                                                      double path) noexcept;

/// Fringing factor by which a deliberate gap's section grows: F = 1 + (g / sqrt(A)) ln(2 G / g), G the window height,
/// g the total air in the path (two joints of g/2: a leg that ends on a yoke's plane fringes like half of an open gap
/// g). W. T. McLyman, Transformer and Inductor Design Handbook (from memory). Valid for g far below sqrt(A); not for
/// joint gaps of micrometres: below 50 um per joint the factor is taken as 1; never below 1.
[[nodiscard]] double fringingFactor(double gap, double area, double windowHeight) noexcept;

/// Shell cores: the loop through one outer leg and back through the other as a path of its own. Its inductance per
/// ampere-turn is the difference of the outer legs' fluxes that the difference of the windows' ampere-turns drives:
/// half the loop, with one of the path's two joints, on the section of both legs.
[[nodiscard]] CoreModel outerLoop(const CoreModel& core);

/// Complex inductance of one turn, H (Lambda = Lambda' - j Lambda''), blocks as parallel paths under one magnetomotive
/// force:
///     Lambda(f) = mu0 A / l  sum_k share_k mu_e,k(f).
/// At f = 0 the real limit.
[[nodiscard]] std::complex<double> turnInductance(const CoreModel& core, double frequency) noexcept;

}  // namespace magnetics
