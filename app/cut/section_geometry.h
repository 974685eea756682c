// SPDX-License-Identifier: GPL-3.0-or-later
// Where the items of a coil lie in the drawing, what is under a point, and where a dragged item would go.
// Coordinates in m: x from the tongue's surface (two legs: of the left leg) to the right, y upward from the window's
// lower wall.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "coil/coil_build.h"
#include "document/selection.h"

namespace cut {

/// One item of the winding order as it is drawn: all its layers as one rectangle.
struct Shape {
    enum class Kind { Section, Barrier, Shield } kind = Kind::Section;
    design::ItemIndex item;
    std::string name;     ///< "P.a", "SH1"; of a barrier the insulation's name
    std::string winding;  ///< of a section
    int leg = 1, chamber = 1;
    coil::Box box;
    double turns = 0;
    int layers = 0;
    double turnsPerLayer = 0;  ///< of the fullest layer
    double resistance20 = 0;   ///< DC, ohm
    double meanTurn = 0;       ///< m
    bool random = false;
    double foldedTo = 0;  ///< of a box shield: where its folded ends stop, x as drawn; its own face: not folded
    [[nodiscard]] bool isFolded() const { return foldedTo < box.x0 || foldedTo > box.x1; }
    double startX = 0, startY = 0;    ///< where the section's first turn lies
    double finishX = 0, finishY = 0;  ///< where its last turn ends
};

/// What does not fit: the stretch beyond a chamber's room.
struct Overshoot {
    coil::Box box;
    double over = 0;  ///< m
    int leg = 1, chamber = 1;
};

/// Where a dragged item would be put down.
struct Landing {
    design::ItemIndex before;      ///< as `design::moveItem` takes it
    double x = 0, y0 = 0, y1 = 0;  ///< the line to show
};

/// A box measured from its own leg's surface, as drawn: the right-hand leg of two is the mirror of the left.
[[nodiscard]] coil::Box drawn(const coil::CoilBuild& build, int leg, const coil::Box& box) noexcept;

/// Every item that has a place in the drawing, in the design's order. Barriers have no layers of their own: they are
/// found between their neighbours, and only where the build belongs to the design.
[[nodiscard]] std::vector<Shape> shapesOf(const coil::CoilBuild& build, const design::Design& design);

/// Chambers that are over their room; empty if all fits.
[[nodiscard]] std::vector<Overshoot> overshoots(const coil::CoilBuild& build);

/// The item's shape, or null.
[[nodiscard]] const Shape* shapeOf(const std::vector<Shape>& shapes, design::ItemIndex item) noexcept;

/// What lies at a point. Items thinner than 2 `slack` are taken as 2 `slack` wide; of sections wound in one hand,
/// the one after `current` is taken. Outside the window it is the core; on the bobbin the bobbin; nothing in free room.
[[nodiscard]] document::Selected hit(const coil::CoilBuild& build, const std::vector<Shape>& shapes, double x, double y,
                                     double slack, const document::Selected& current = {});

/// Where an item dropped at a point goes: the place whose chamber is nearest, before the first item whose middle lies
/// farther out than the point. Empty if the design has no place.
[[nodiscard]] std::optional<Landing> landingAt(const coil::CoilBuild& build, const design::Design& design,
                                               const std::vector<Shape>& shapes, double x, double y);

/// The next item to the right (+1) or left (-1) as drawn, on through all places.
[[nodiscard]] std::optional<design::ItemIndex> beside(const design::Design& design, design::ItemIndex from,
                                                      int direction);

/// The item at the same depth in the next chamber above (+1) or below (-1) on the same leg.
[[nodiscard]] std::optional<design::ItemIndex> acrossChambers(const design::Design& design,
                                                              const std::vector<Shape>& shapes, design::ItemIndex from,
                                                              int direction);

/// The item behind an index, or null where there is none.
[[nodiscard]] const design::Item* itemAt(const design::Design& design, design::ItemIndex index) noexcept;

}  // namespace cut
