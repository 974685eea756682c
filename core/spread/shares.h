// SPDX-License-Identifier: GPL-3.0-or-later
// How much of a figure's variance each cause makes.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "spread/draws.h"

namespace spread {

/// A figure against standard numbers x: y = c + sum (a x + b (x^2 - 1) / sqrt 2), by least squares: the first two
/// Hermite polynomials, orthonormal where x is normal.
struct Regression {
    std::vector<double> linear, square;  ///< a and b, a number each; b is 0 where units are too few for it
    double explained = 0;                ///< R^2: what of the units' variance this makes
    double residual = 0;                 ///< variance of what is left
    bool squares = true;                 ///< false: fewer than 10 units a coefficient
    bool enough = true;                  ///< false: too few units at all, or no variance
};
/// `numbers`: a row a unit; `values`: a column each, all finite, a unit each.
[[nodiscard]] std::vector<Regression> regressions(const std::vector<std::vector<double>>& numbers,
                                                  const std::vector<std::vector<double>>& values);

/// Shares of the variance of all that will be made, in whatever lots: causes are independent, and the numbers'
/// coefficients say what each does. Few lots do not blur this as they blur the variance of these units.
struct VarianceShares {
    std::vector<double> share;  ///< a cause each; with what is left and what lot and unit do together they make 1
    double explained = 0;       ///< of the regression
    bool squares = true, enough = true;
};
[[nodiscard]] VarianceShares sharesOf(const Regression& regression, const std::vector<Cause>& causes);

/// First-order and total indices of Sobol' of a function of independent uniform numbers in the unit cube.
struct VarianceIndices {
    std::vector<double> first, total;
    double mean = 0, variance = 0;
};
/// From n (d + 2) calls. First: A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259, (b) of its table; total:
/// M. J. W. Jansen (1999), (f) of the same (both from memory).
[[nodiscard]] VarianceIndices varianceIndices(const std::function<double(const std::vector<double>&)>& function,
                                              std::size_t dimensions, std::uint64_t n, std::uint64_t seed);

}  // namespace spread
