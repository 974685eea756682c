// SPDX-License-Identifier: GPL-3.0-or-later
//
// Method: multipoles of order 16 about the wires, Fourier modes in the sheet (cell_multipole.cpp): a linear system of
// 18 unknowns, some tens of microseconds. Equal rows are one row before the plane half-way, where the potential is odd
// (aligned rows) or odd in even modes and even in odd ones (nested rows).
// Against finite elements (tests/references/capacitance.json): within 0.02 % on a sheet, touching and nested.
#include "field/wire_cell.h"

#include <algorithm>
#include <cmath>

#include "field/cell_multipole.h"

namespace field {

namespace {

using Complex = std::complex<double>;

constexpr double least = 1e-9;  // m: below, lengths are rounding

/// Dielectrics in series between plates.
Complex plates(double gap, double sheet, Complex sheetPermittivity, Complex filler) {
    const double paper = std::clamp(sheet, 0.0, gap);
    return vacuumPermittivity / (paper / sheetPermittivity + std::max(gap - paper, least * 1e-3) / filler);
}

WireRow rowOf(double bare, double overall, double pitch, Complex enamel, Complex filler) {
    const double outside = std::max(overall, bare);
    return {bare, outside, std::max(pitch, outside), enamel, filler};
}

/// A row before a plane at `distance` from the wires' centres with a sheet on the plane, per area.
Complex halfCell(const WireRow& row, double distance, double sheet, Complex permittivity, bool nested) {
    const double radius = row.overall / 2;
    FacingPlane plane;
    plane.permittivity = permittivity;
    plane.staggered = nested;
    plane.sheet = std::clamp(sheet, 0.0, std::max(0.0, distance - radius));
    if (plane.sheet < least) plane.sheet = 0;
    plane.toSheet = distance - plane.sheet;
    return rowToPlane(row, plane) / row.pitch;
}

/// Wire centres cannot come nearer than the wires allow.
double possibleDistance(const RowCell& cell, const WireRow& row) {
    const double across = cell.nested ? row.pitch / 2 : 0;
    const double nearest = std::sqrt(std::max(0.0, row.overall * row.overall - across * across));
    return std::max(cell.distance, nearest);
}

bool equalRows(const RowCell& c) {
    return std::abs(c.bare - c.otherBare) < least && std::abs(c.overall - c.otherOverall) < least &&
           std::abs(c.pitch - c.otherPitch) < least && c.enamel == c.otherEnamel;
}

}  // namespace

Complex rowCapacitance(const RowCell& cell) {
    if (cell.bare <= 0 && cell.otherBare <= 0)
        return plates(cell.distance, cell.sheet, cell.sheetPermittivity, cell.filler);
    if (cell.bare <= 0) {
        RowCell turned = cell;
        std::swap(turned.bare, turned.otherBare);
        std::swap(turned.overall, turned.otherOverall);
        std::swap(turned.pitch, turned.otherPitch);
        std::swap(turned.enamel, turned.otherEnamel);
        return rowCapacitance(turned);
    }
    const auto row = rowOf(cell.bare, cell.overall, cell.pitch, cell.enamel, cell.filler);
    if (cell.otherBare <= 0)
        return halfCell(row, std::max(cell.distance, row.overall / 2), cell.sheet, cell.sheetPermittivity, false);
    if (equalRows(cell)) {
        const double distance = possibleDistance(cell, row);
        return halfCell(row, distance / 2, cell.sheet / 2, cell.sheetPermittivity, cell.nested) / 2.0;
    }
    const auto other = rowOf(cell.otherBare, cell.otherOverall, cell.otherPitch, cell.otherEnamel, cell.filler);
    const double gap = std::max(0.0, cell.distance - (row.overall + other.overall) / 2);
    const auto mine = halfCell(row, (row.overall + gap) / 2, cell.sheet / 2, cell.sheetPermittivity, false);
    const auto its = halfCell(other, (other.overall + gap) / 2, cell.sheet / 2, cell.sheetPermittivity, false);
    return mine * its / (mine + its);
}

Complex turnCapacitance(double bare, double overall, double pitch, Complex enamel, Complex filler) {
    return alternatingRow(rowOf(bare, overall, pitch, enamel, filler));
}

}  // namespace field
