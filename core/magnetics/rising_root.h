// SPDX-License-Identifier: GPL-3.0-or-later
// Where a rising function passes zero.
#pragma once

#include <cmath>
#include <limits>

#include "magnetics/monotone_curve.h"

namespace magnetics {

/// Root of a rising function with its slope, from a guess: Newton's step where it stays inside what is known to
/// bracket the root and the step before it halved the lack, else halving.
template <class Function>
double risingRoot(double guess, double tolerance, const Function& f) {
    constexpr double unbounded = std::numeric_limits<double>::infinity();
    double low = -unbounded, high = unbounded, x = guess, before = unbounded;
    for (int round = 0; round < 200; ++round) {
        const CurvePlace place = f(x);
        const double lack = std::abs(place.value);
        if (lack <= tolerance) return x;
        (place.value > 0 ? high : low) = x;
        const double next = x - place.value / place.slope;
        if (std::abs(next - x) <= 1e-15 * std::abs(x)) return next;
        const bool bracketed = std::isfinite(low) && std::isfinite(high);
        const bool trusted = next > low && next < high && (!bracketed || lack <= before / 2);
        x = trusted ? next : (low + high) / 2;
        before = lack;
    }
    return x;
}

}  // namespace magnetics
