// SPDX-License-Identifier: GPL-3.0-or-later
// Which items of two sequences belong together. For the room's own sources.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

namespace design {

/// Index pairs (first sequence, second sequence), both rising.
using Alignment = std::vector<std::pair<std::size_t, std::size_t>>;

/// The heaviest common subsequence: pairs with `same(i, j)` that rise in both, of the largest sum of `weight(i)`.
/// By dynamic programming over all prefixes; costs n times m.
template <class Same, class Weight>
[[nodiscard]] Alignment alignment(std::size_t n, std::size_t m, const Same& same, const Weight& weight) {
    std::vector<std::vector<double>> best(n + 1, std::vector<double>(m + 1, 0.0));
    for (std::size_t i = n; i-- > 0;)
        for (std::size_t j = m; j-- > 0;) {
            best[i][j] = std::max(best[i + 1][j], best[i][j + 1]);
            if (same(i, j)) best[i][j] = std::max(best[i][j], best[i + 1][j + 1] + weight(i));
        }
    Alignment pairs;
    std::size_t i = 0, j = 0;
    while (i < n && j < m) {
        if (same(i, j) && best[i][j] == best[i + 1][j + 1] + weight(i))
            pairs.emplace_back(i++, j++);
        else if (best[i][j] == best[i + 1][j])
            ++i;
        else
            ++j;
    }
    return pairs;
}

}  // namespace design
