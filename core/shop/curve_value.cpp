// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/curve_value.h"

#include <cmath>

#include "analysis/between.h"

namespace shop {

double valueAt(const analysis::Trace& trace, const analysis::Curve& curve, double f) {
    return analysis::between(trace.frequency, curve.y, f).value_or(std::nan(""));
}

}  // namespace shop
