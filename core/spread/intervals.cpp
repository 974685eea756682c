// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/intervals.h"

#include <algorithm>
#include <cmath>

namespace spread {

Interval wilson(std::size_t kept, std::size_t all, double z) noexcept {
    if (all == 0) return {0, 1};
    const auto n = static_cast<double>(all);
    const double p = static_cast<double>(kept) / n, z2 = z * z / n;
    const double middle = (p + z2 / 2) / (1 + z2);
    const double half = z / (1 + z2) * std::sqrt(p * (1 - p) / n + z2 / (4 * n));
    return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

namespace {

/// The greatest k with P(Bin(n, p) >= k) >= confidence, and that probability; 0 if even 1 does not reach it.
Ranks mostInward(std::size_t n, double p, double confidence) {
    // P(X >= k) = 1 - sum of the first k terms, each from the one before; logarithms, for many units.
    double below = 0, term = static_cast<double>(n) * std::log1p(-p);
    Ranks found;
    for (std::size_t k = 1; k <= n; ++k) {
        below += std::exp(term);
        if (1 - below < confidence) break;
        found = {k, k, 1 - below};
        const auto x = static_cast<double>(k), all = static_cast<double>(n);
        term += std::log((all - x + 1) / x) + std::log(p) - std::log1p(-p);
    }
    return found;
}

}  // namespace

Ranks oneSided(std::size_t n, double coverage, double confidence) {
    Ranks ranks = mostInward(n, 1 - coverage, confidence);
    if (ranks.low > 0) ranks.high = n + 1 - ranks.low;
    return ranks;
}

Ranks twoSided(std::size_t n, double coverage, double confidence) {
    Ranks both = mostInward(n, 1 - coverage, confidence);
    const std::size_t k = both.low / 2;
    if (k == 0) return {};
    return {k, n + 1 - k, both.confidence};
}

double quantile(const std::vector<double>& sorted, double q) noexcept {
    if (sorted.empty()) return std::nan("");
    const double place = q * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

}  // namespace spread
