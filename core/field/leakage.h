// SPDX-License-Identifier: GPL-3.0-or-later
// Leakage inductance matrix between layers from the two-dimensional field in the window and beyond it.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "coil/coil_build.h"

namespace field {

/// Carries uniform current density: one layer or section in a window's cross-section.
struct CurrentBox {
    coil::Box box;
    double turns = 1;
};

/// A window w x h with infinitely permeable walls; x from the tongue.
struct Window {
    double width = 0;
    double height = 0;
};

/// What stands round the window's cross-section.
enum class Surroundings {
    Closed,  ///< iron on all four sides
    Open     ///< the tongue as one iron plane (x = 0), free space beyond
};

/// M'_ij of one ampere in one turn each, H per metre of turn, shape n x n, symmetric: the window part of the inductance
/// matrix without the (0,0) term that is the main flux (Closed), or with logarithmic potential of boxes and their
/// images in the tongue (Open, defined up to a constant times the all-ones matrix).
///
///     Closed:  M'_ij = mu0 / (w h)  sum_{(m,n) != (0,0)}  e_m e_n F_i F_j / ((m pi/w)^2 + (n pi/h)^2)
///
/// E. Roth, Revue generale de l'electricite (1928), with the main flux kept out; one direction summed in closed form.
/// Exact for balanced ampere-turns in the closed window. Positive semidefinite on vectors that sum to zero.
[[nodiscard]] Eigen::MatrixXd windowMatrix(const std::vector<CurrentBox>& boxes, const Window& window,
                                           Surroundings around);

/// lambda_ij = M'_ii + M'_jj - 2 M'_ij, H/m per turn squared: twice the energy with +1 ampere-turn in i and -1 in j.
[[nodiscard]] Eigen::MatrixXd pairLambda(const Eigen::MatrixXd& windowMatrix);

/// Leakage matrix of all layers of a coil build, H, shape n x n for n layers in `build.layers` order, for currents in
/// the layers' wires (turns and senses included). Only combinations with zero net ampere-turns are physical; the gauge
/// returns the net current evenly, so that the matrix is positive semidefinite as a whole.
///
/// Ends::Beyond: lambda inside times the turn's length within the window (2 x stack on a shell, 1 x stack on a two-leg
/// core), lambda outside times the rest at the pair's mean radius, -1/2 lambda_ij N_i N_j in that gauge; layers that do
/// not fill the height wound are weighted as parts of a whole one, so that a layer cut along the axis leaks as the
/// whole. Ends::Walled: the axial mode n = 0 with the perimeter l(x) inside the integral, modes n >= 1 times the
/// geometric mean of the two turn lengths. The diagonal also holds what a row of round wires has more than an even
/// sheet, their static internal inductance mu0/8pi per metre included (some 10 % of lambda between neighbouring layers,
/// under 1 % between windings).
///
/// Coils on both legs of a two-leg core: exact in the window they share; beyond it each leg's turns before their own
/// iron, and the ampere-turns of one leg against the other's by the field round the whole core (`legAgainstLeg`).
///
/// Against axisymmetric finite elements (Walled, round tongue): up to 0.1 % on concentric coils, +0.9 % offset, +3 %
/// with a one-sided margin, +4 % side by side; leg against leg in space: -2 % on thin coils, -3 to
/// -8 % on thick or short ones. Not `valid`, with
/// the reason in `why`: a coil larger than its window.
/// 64 layers take some 1 ms, 128 some 4 ms.
struct LeakageResult {
    Eigen::MatrixXd matrix;  ///< H
    /// By chance, relative: of wild windings. Their wires' places matter little (1 %, +-0.1 to 0.5 %); how high the
    /// body turns out, 0.76 to 0.81 of it wire where 0.73 is laid out, moves the leakage to a neighbour by 3 to 13 %
    /// (simulated windings, tests/references/wild_winding.json).
    double spread = 0;
    bool valid = true;
    std::string why;
};
[[nodiscard]] LeakageResult leakageMatrix(const coil::CoilBuild& build, design::Ends ends);

}  // namespace field
