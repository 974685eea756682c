// SPDX-License-Identifier: GPL-3.0-or-later
// Edges of the selected item that the hand can take: margins of a section or shield, thickness of insulation.
#pragma once

#include <vector>

#include "cut/frame.h"
#include "cut/section_geometry.h"

namespace cut {

/// One edge that can be dragged.
struct Handle {
    enum class Edge { Low, High, Thickness } edge = Edge::Low;
    design::ItemIndex item;
    QRectF at;         ///< where it is drawn and taken
    QPointF grows;     ///< unit step on the ground that makes the value larger
    double value = 0;  ///< m, as the design has it
};

/// Handles of an item, where it is drawn; none for other selections.
[[nodiscard]] std::vector<Handle> handlesOf(const Frame& frame, const design::Design& design,
                                            const std::vector<Shape>& shapes, const document::Selected& selected);

/// "margin at the low end of P.a", "thickness of insulation 0.1 mm".
[[nodiscard]] QString handleWords(const design::Design& design, const Handle& handle);

/// The value after a drag by `moved` on the ground, m: in steps that are seen at this scale, not below nothing
/// (a thickness: not below one step).
[[nodiscard]] double valueAfter(const Handle& handle, const QPointF& moved, double scale);

/// The design with that edge's value.
[[nodiscard]] design::DesignPtr withEdge(const design::Design& design, const Handle& handle, double value);

}  // namespace cut
