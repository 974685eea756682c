// SPDX-License-Identifier: GPL-3.0-or-later
// A curve read between its points.
#pragma once

#include "analysis/answer.h"

namespace shop {

/// Value of a curve at f, straight between its points over the logarithm of the frequency; not a number outside.
[[nodiscard]] double valueAt(const analysis::Trace& trace, const analysis::Curve& curve, double f);

}  // namespace shop
