// SPDX-License-Identifier: GPL-3.0-or-later
// Which designs a unit can be of that is known by its readings alone.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "spread/figure_read.h"
#include "units/figure.h"

namespace learn {

/// What a design that may be the one computes.
struct Known {
    std::string name;
    std::vector<units::Figure> figures;
};

/// One reading beside the figure that it is held against.
struct Held {
    std::string reading, figure;  ///< "dcr.1", "dcr.P"
    std::string unit;
    double read = 0, computed = 0;
    double deviations = 0;  ///< standard deviations of what method, materials and instrument allow; with its sign
};

struct Match {
    std::size_t known = 0;             ///< into what was asked
    double distance = 0;               ///< squared Mahalanobis distance of all that were compared
    double probability = 0;            ///< that a unit of this design reads as far off or further
    bool fits = false;                 ///< the probability is 1 in 1000 or more, and something was compared
    std::vector<Held> held;            ///< furthest off first
    std::vector<std::string> lacking;  ///< readings that this design has no figure for
    std::vector<std::pair<std::string, std::string>> names;  ///< a winding as the readings call it, as the design does
};

/// A figure that no reading stands beside yet and that parts two designs.
struct PartingFigure {
    std::string figure;
    std::string unit;
    double first = 0, second = 0;
    double deviations = 0;  ///< how far apart they are
};

/// Every design held against the readings: those that fit first, of these the ones that compute most of the readings,
/// then the likelier. A unit on the desk does not say how its windings are called: every way of calling them is tried,
/// and a ratio the other way round is its inverse.
///
/// Readings y and figures f are compared as logarithms, levels as they are:
///
///     q = r' S^-1 r,   r = ln y - ln f,   S = 0.8 u_i u_k within one kind of figure + diag(0.2 u^2 + d^2)
///
/// u half of the figure's uncertainty and d half of the reading's doubt, both for 95 %. Figures of one kind
/// (inductances, capacitances) rest on the same material, and err alike: the share of 0.8 is our own rule. q is
/// chi-squared with as many degrees of freedom as readings compared.
[[nodiscard]] std::vector<Match> matched(const std::vector<Known>& designs,
                                         const std::vector<spread::FigureRead>& readings);

/// Of two designs that both fit: the figure not read yet in which they lie furthest apart; nothing below two standard
/// deviations.
[[nodiscard]] std::optional<PartingFigure> parting(const Known& first, const Known& second,
                                                   const std::vector<spread::FigureRead>& readings);

}  // namespace learn
