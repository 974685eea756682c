// SPDX-License-Identifier: GPL-3.0-or-later
// What a number of units says about all that will be made.
#pragma once

#include <cstddef>
#include <vector>

namespace spread {

struct Interval {
    double low = 0, high = 0;
    bool operator==(const Interval&) const = default;
};

/// Interval of a share of which `kept` of `all` units are a sample (E. B. Wilson, 1927); two-sided 95 % by default.
[[nodiscard]] Interval wilson(std::size_t kept, std::size_t all, double z = 1.959963984540054) noexcept;

/// Which values in order of size bound the whole of a production, whatever its distribution (S. S. Wilks, 1941).
struct Ranks {
    std::size_t low = 0, high = 0;  ///< counted from 1, from the least; 0: too few units
    double confidence = 0;          ///< reached
};
/// One bound: the k-th from the outside such that at least `coverage` lies within with `confidence`; the most inward k:
/// P(Bin(n, 1 - coverage) >= k) >= confidence. `low` from the least; the same k from the greatest bounds above.
[[nodiscard]] Ranks oneSided(std::size_t n, double coverage, double confidence);
/// Both bounds at k from each end: P(Bin(n, 1 - coverage) >= 2 k) >= confidence.
[[nodiscard]] Ranks twoSided(std::size_t n, double coverage, double confidence);

/// Quantile of sorted values, straight between neighbours, at (n - 1) q.
[[nodiscard]] double quantile(const std::vector<double>& sorted, double q) noexcept;

}  // namespace spread
