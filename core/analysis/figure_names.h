// SPDX-License-Identifier: GPL-3.0-or-later
// Which figures a design has and in what unit, without computing them: for choosing what to promise.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "design/design.h"
#include "units/kind.h"

namespace analysis {

/// Every figure that can be promised of a design, without hook-up: of windings, pairs of windings, shields and core, of
/// the coil, of ports, of a whole hook-up. A figure of a port stands also without its port, which a promise may name
/// apart.
[[nodiscard]] std::vector<std::string> figureNames(const design::Design& design);
/// The kind of quantity that a figure of this name is, by the quantity before the first dot; `Number` if there is no
/// such quantity.
[[nodiscard]] units::Kind kindOfFigure(std::string_view name);
/// The kind of the curve of a trace that a mask limits; `Number` if there is no such trace.
[[nodiscard]] units::Kind kindOfTrace(std::string_view trace);

}  // namespace analysis
