// SPDX-License-Identifier: GPL-3.0-or-later
// Places across a sheet at which its field is told.
#pragma once

#include <Eigen/Core>
#include <vector>

namespace magnetics {

/// Half a sheet from its middle (0) to its surface (1), the field between as an even polynomial through its values at
/// these places: the Gauss-Lobatto points of the whole sheet, whose weights integrate such polynomials (C. Canuto et
/// al., Spectral Methods in Fluid Dynamics, 1988, from memory). In units of half the thickness the field obeys
///
///     d2H/dx2 = ((d / 2)^2 / rho) dB/dt
///
/// (Faraday's and Ampere's laws, sheet far wider than thick, insulated). Tested with each polynomial and integrated by
/// parts, at each place i but the surface:
///
///     sum_j stiffness_ij H_j + ((d / 2)^2 / rho) weight_i dB_i/dt = 0,
///
/// the sheet's mean flux density is  sum_i weight_i B_i.
struct SheetGrid {
    std::vector<double> places;   ///< rising, the last one 1
    std::vector<double> weights;  ///< together 1
    Eigen::MatrixXd stiffness;    ///< integral of the slopes' products; each row sums to 0

    /// `places`: how many, at least 1; one alone is a sheet whose field is even throughout.
    explicit SheetGrid(int places);
};

/// How many places a sheet wants at half thickness over skin depth, the latter at the fundamental and from the greatest
/// permeability: of harmonics up to the seventh 0.1 dB (found by doubling the places; tests hold it).
[[nodiscard]] int placesFor(double halfOverSkinDepth) noexcept;

}  // namespace magnetics
