// SPDX-License-Identifier: GPL-3.0-or-later
// Items of the coil in words: labels, tips, names for undo and for screen readers.
#pragma once

#include <QString>

#include "cut/section_geometry.h"

namespace cut {

/// As acts name it: "S.a", "shield SH1", "insulation 0.08 mm".
[[nodiscard]] QString itemName(const design::Item& item);
/// What is written on a section in the drawing and on its chip: "S.a 1200"; a shield's name; a barrier's thickness.
[[nodiscard]] QString itemLabel(const design::Item& item);
/// A whole sentence for screen readers: "section S.a, 1200 turns, item 4 of 5 from the core outward".
[[nodiscard]] QString itemSentence(const design::Design& design, design::ItemIndex index);
/// The main numbers, a line each.
[[nodiscard]] QString itemTip(const Shape& shape, const design::Design& design);
/// The whole coil in one sentence.
[[nodiscard]] QString coilSentence(const design::Design& design);

/// A length of the drawing: "0.35 mm".
[[nodiscard]] QString lengthWords(double metres, int digits = 3);

}  // namespace cut
