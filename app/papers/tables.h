// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of a datasheet, with light rules.
#pragma once

#include "papers/paper.h"
#include "shop/datasheet.h"

namespace papers {

/// How tight a table is set.
struct Setting {
    double size = 9;   ///< pt
    double row = 4.5;  ///< mm
};
inline constexpr Setting usual{9, 4.5}, tight{8, 3.8};

/// A heading in the accent colour; returns where the text below it begins.
double paintHeading(Paper& paper, const QRectF& column, double y, const QString& words);

/// Height of the table of terminals, each function on one line.
[[nodiscard]] double pinoutHeight(const std::vector<shop::PinoutRow>& rows);
/// Terminal, place, function and phase dot; returns where the table ends.
double paintPinout(Paper& paper, const QRectF& column, double y, const std::vector<shop::PinoutRow>& rows);

/// Height of rows in a column of that width.
[[nodiscard]] double valuesHeight(const Paper& paper, double width, const std::vector<shop::ValueRow>& rows,
                                  const Setting& setting);
/// Rows from `from` on until `bottom`; moves y and returns the first row that found no room.
std::size_t paintValues(Paper& paper, const QRectF& column, double& y, double bottom,
                        const std::vector<shop::ValueRow>& rows, std::size_t from, const Setting& setting);

}  // namespace papers
