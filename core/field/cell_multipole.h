// SPDX-License-Identifier: GPL-3.0-or-later
// Multipole solution of a periodic row of enamelled round wires: what wire_cell is made of.
#pragma once

#include <complex>

namespace field {

/// F/m; CODATA 2018.
inline constexpr double vacuumPermittivity = 8.8541878128e-12;

/// One row of enamelled wires in filler. Lengths in m, permittivities relative.
struct WireRow {
    double bare = 0;
    double overall = 0;
    double pitch = 0;
    std::complex<double> enamel{3.5};
    std::complex<double> filler{1.0};
};

/// What a row faces: a flat sheet whose far side is an equipotential plane, or the plane of antisymmetry to an equal
/// row.
struct FacingPlane {
    double toSheet = 0;  ///< from wire centre to the sheet's near face, m
    double sheet = 0;    ///< thickness to the plane, m
    std::complex<double> permittivity{3.0};
    bool staggered = false;  ///< the row's image is shifted by half a pitch: odd modes meet an even plane
};

/// Charge per wire and metre at 1 V between the row and the plane, F/m.
[[nodiscard]] std::complex<double> rowToPlane(const WireRow& row, const FacingPlane& plane, int order = 16);

/// Charge per wire and metre at +1/2 V with neighbours at -1/2 V and so on for ever, F/m per volt between them, halved
/// for its two neighbours.
[[nodiscard]] std::complex<double> alternatingRow(const WireRow& row, int order = 16);

}  // namespace field
