// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/between.h"

#include <algorithm>
#include <cmath>

namespace analysis {

std::optional<double> between(const std::vector<double>& frequency, const std::vector<double>& value,
                              double f) noexcept {
    const auto above = std::lower_bound(frequency.begin(), frequency.end(), f);
    if (above == frequency.end()) return {};
    const auto k = static_cast<std::size_t>(above - frequency.begin());
    if (*above == f) return value[k];
    if (k == 0) return {};
    const double low = frequency[k - 1];
    return value[k - 1] + (value[k] - value[k - 1]) * std::log(f / low) / std::log(frequency[k] / low);
}

}  // namespace analysis
