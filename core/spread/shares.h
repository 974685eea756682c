// SPDX-License-Identifier: GPL-3.0-or-later
// How much of a figure's variance each cause makes.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

namespace spread {

/// Shares of the variance by regression on independent standard causes x, y = c + sum (a x + b (x^2 - 1) / sqrt 2): the
/// first two Hermite polynomials, orthonormal where x is normal, so that the share of a cause is (a^2 + b^2) / var y.
struct RegressedShares {
    std::vector<double> share;  ///< a cause each
    double explained = 0;       ///< R^2: what of the variance the regression makes; the rest are cross and higher terms
    bool squares = true;        ///< false: too few units for squares (less than 10 a coefficient)
    bool enough = true;         ///< false: too few units at all, or no variance; then no shares
};
/// `causes`: a row a unit; `values`: a column each, all finite, a unit each.
[[nodiscard]] std::vector<RegressedShares> regressedShares(const std::vector<std::vector<double>>& causes,
                                                           const std::vector<std::vector<double>>& values);

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
