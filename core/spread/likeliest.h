// SPDX-License-Identifier: GPL-3.0-or-later
// The unit that a production would most likely have made where some of its figures were measured.
#pragma once

#include "spread/figure_read.h"
#include "spread/run.h"

namespace spread {

/// How far one number of the sample is off.
struct Deviated {
    std::size_t varying = 0;  ///< in `Variation::all`
    double deviate = 0;       ///< in standard deviations of what varies
    double value = 0;
};

/// The design as the sample is.
struct LikeliestUnit {
    design::DesignPtr design;
    Variation variation;
    std::vector<Deviated> deviated;  ///< greatest deviate first
    std::vector<double> figures;     ///< of this design, as the readings
    double furthest = 0;             ///< greatest |figure less reading| in the reading's doubt
};

/// The deviates z of all that varies that are likeliest with readings y of figures f: z is normal with the correlations
/// C that numbers of one lot have (`Draws`), a reading off by a standard deviation s of half its doubt, and what is
/// made least is
///     z' C^-1 z + sum ((y - f(z)) / s)^2,
/// by Gauss and Newton: z <- C J' (J C J' + S)^-1 (y - f(z) + J z), J the slopes of f (the linear case is the normal
/// posterior mean: A. Tarantola, Inverse Problem Theory, ch. 3, from memory). Fewer readings than numbers do: what the
/// readings do not tell stays nominal. A doubt that is not told is `measurementGuard`. Turns are taken as counted
/// right. Throws units::BadInput for a figure that is none of this design. Stopped, the design is null.
[[nodiscard]] LikeliestUnit likeliestUnit(const design::Design& design, const catalog::Catalog& shop,
                                          const catalog::Tolerances& tolerances, std::vector<FigureRead> readings,
                                          const std::stop_token& stop = {});

}  // namespace spread
