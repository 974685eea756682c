// SPDX-License-Identifier: GPL-3.0-or-later
// A coil build as capacitance sees it: conductors of one kind, the dielectrics on a path, cells remembered.
#pragma once

#include <array>
#include <complex>
#include <map>
#include <vector>

#include "field/capacitance.h"
#include "field/wire_cell.h"

namespace field {

/// A layer or shield with what its cells need.
struct Solid {
    Body body;
    int leg = 1, chamber = 1;
    coil::Box box;
    bool flat = false;    ///< foil
    bool nested = false;  ///< lies in the grooves of the layer beneath
    bool random = false;  ///< wound wild: wires at a mean pitch in both directions
    double bare = 0, overall = 0;
    double pitch = 0;  ///< of turns, m
    int strands = 1;
    std::complex<double> enamel{3.5};
    double foldedTo = 0;    ///< of a foil whose ends are folded inward: where they stop, x; else 0
    double turnLength = 0;  ///< m, at the box's middle
    /// From the box's face to where a cell's distance begins: the wire's centre, or a foil's surface.
    [[nodiscard]] double depth() const noexcept { return flat ? 0 : overall / 2; }
    /// Where it begins at its ends, x.
    [[nodiscard]] double endsFrom() const noexcept { return foldedTo > 0 ? foldedTo : box.x0; }
    /// Turn at radial position x: 2 pi per metre outward (straight sides with round corners).
    [[nodiscard]] double lengthAt(double x) const noexcept {
        return turnLength + 6.283185307179586 * (x - box.middle());
    }
};

/// Solids at one radial position that share it: sections wound in one hand, else a single one.
struct Column {
    std::vector<const Solid*> members;
    [[nodiscard]] double x0() const;
    [[nodiscard]] double x1() const;
    /// A member's part of the column's wires.
    [[nodiscard]] double share(const Solid& member) const;
    /// Distance of neighbouring wires, of whichever member.
    [[nodiscard]] double wirePitch(const Solid& member) const;
};

/// Sheets met on a straight path, in series.
struct Path {
    double sheet = 0;  ///< thickness of all sheets, m
    std::complex<double> permittivity{1.0};
};

class Scene {
public:
    Scene(const coil::CoilBuild& build, bool lossy);

    [[nodiscard]] const coil::CoilBuild& build() const noexcept { return build_; }
    [[nodiscard]] const std::vector<Solid>& solids() const noexcept { return solids_; }
    [[nodiscard]] const std::vector<coil::Dielectric>& dielectrics() const noexcept { return dielectrics_; }
    [[nodiscard]] std::complex<double> filler() const noexcept { return filler_; }
    /// Part of the turn inside a window, m: both windows of a shell core, the one of a two-leg core.
    [[nodiscard]] double windowPart() const noexcept { return (build_.legs == 2 ? 1 : 2) * build_.stack; }

    [[nodiscard]] Path radialPath(int leg, double x0, double x1, double y) const;
    [[nodiscard]] Path axialPath(int leg, double y0, double y1, double x) const;
    [[nodiscard]] static Path inSeries(const Path& a, const Path& b);

    /// F/m2 by `rowCapacitance`, remembered by lengths to 0.1 nm.
    [[nodiscard]] std::complex<double> areal(const RowCell& cell);
    /// F/m by `turnCapacitance`, remembered likewise.
    [[nodiscard]] std::complex<double> turnToTurn(double bare, double overall, double pitch,
                                                  std::complex<double> enamel);

    /// A cell with this side filled in: wire, pitch, enamel, filler.
    [[nodiscard]] RowCell cellFrom(const Solid& solid, double pitch) const;
    static void setOther(RowCell& cell, const Solid& solid, double pitch);

private:
    using Key = std::array<long long, 14>;
    [[nodiscard]] std::complex<double> relative(double permittivity, double loss) const;
    [[nodiscard]] Path path(int leg, double from, double to, double across, bool radial) const;

    const coil::CoilBuild& build_;
    bool lossy_;
    std::complex<double> filler_;
    std::vector<Solid> solids_;
    std::vector<coil::Dielectric> dielectrics_;
    std::map<Key, std::complex<double>> rows_, turns_;
};

/// Solids sorted outward, those that share a radial position together.
[[nodiscard]] std::vector<Column> columnsOf(std::vector<const Solid*> solids);

}  // namespace field
