// SPDX-License-Identifier: GPL-3.0-or-later
// Capacitance of rows of enamelled wires: a small boundary solution of the periodic cell.
#pragma once

#include <complex>

namespace field {

/// Periodic cell of a row of round wires against another row or a flat conductor. Lengths in m. Permittivities are
/// relative and may carry loss as eps (1 - j tan delta). Either side may be flat; two flat sides are plates.
struct RowCell {
    double bare = 0;  ///< bare diameter of this row's wires; 0: a flat conductor
    double overall = 0;
    double pitch = 0;
    double otherBare = 0;  ///< of the facing row; 0: a flat conductor
    double otherOverall = 0;
    double otherPitch = 0;  ///< differing pitches: each row's half against the plane half-way (symmetric split)
    double sheet = 0;       ///< total sheet thickness between the rows: in the middle, or lying on a flat conductor
    double distance = 0;    ///< between wire centres (to a flat conductor: from centre to surface; plates: the gap)
    bool nested = false;    ///< rows shifted by half a pitch
    std::complex<double> enamel{3.5};
    std::complex<double> otherEnamel{3.5};
    std::complex<double> sheetPermittivity{3.0};
    std::complex<double> filler{1.0};
};

/// Capacitance between the two, per area of layer, F/m2 (complex: imaginary part negative with loss).
/// Multipoles of the periodic row; against finite elements within 0.05 % on a sheet, touching and nested
/// (tests/references). Rows that differ in wire or pitch: each against the plane half-way, in series.
[[nodiscard]] std::complex<double> rowCapacitance(const RowCell& cell);

/// Capacitance from turn to turn within a row, F per metre of wire, as seen with neighbours at opposite potential:
/// charge per turn / 2 at +-1/2 V (check rows T01, T06).
[[nodiscard]] std::complex<double> turnCapacitance(double bare, double overall, double pitch,
                                                   std::complex<double> enamel, std::complex<double> filler);

}  // namespace field
