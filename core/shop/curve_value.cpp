// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/curve_value.h"

#include <algorithm>
#include <cmath>

namespace shop {

double valueAt(const analysis::Trace& trace, const analysis::Curve& curve, double f) {
    const auto at = std::lower_bound(trace.frequency.begin(), trace.frequency.end(), f);
    if (at == trace.frequency.end()) return std::nan("");
    const auto k = static_cast<std::size_t>(at - trace.frequency.begin());
    if (trace.frequency[k] == f) return curve.y[k];
    if (k == 0) return std::nan("");
    const double low = trace.frequency[k - 1];
    return curve.y[k - 1] + (curve.y[k] - curve.y[k - 1]) * std::log(f / low) / std::log(trace.frequency[k] / low);
}

}  // namespace shop
