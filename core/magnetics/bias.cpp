// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/bias.h"

#include <algorithm>
#include <cmath>

namespace magnetics {

namespace {

constexpr double shareLeft = 1e-3;   // of the flux that a sweep finds
constexpr double endOfSweep = 1e-4;  // of its peak
constexpr double finenessOfPeak = 1.02;

/// Height of the closed minor loop of field amplitude h about a steady field.
double height(const CoreLoop& core, const CoreLoop::Memory& before, double direct, double h) {
    CoreLoop::Memory memory = before;
    // The loop is entered on the side away from none, which a growing current passes first.
    const double outward = direct < 0 ? -h : h;
    const double first = core.follow(memory, direct + outward).value;
    return std::abs(first - core.follow(memory, direct - outward).value);
}

}  // namespace

Incremental incremental(const CoreLoop& core, const CoreLoop::Memory& before, double direct, double swing) {
    Incremental found;
    CoreLoop::Memory there = before;
    found.flux = core.follow(there, direct).value;
    double low = swing / core.initialSlope() * 1e-3, high = low;
    while (height(core, before, direct, high) < 2 * swing && high < 1e9) high *= 4;
    for (int round = 0; round < 60 && high > low * (1 + 1e-9); ++round) {
        const double middle = std::sqrt(low * high);
        (height(core, before, direct, middle) < 2 * swing ? low : high) = middle;
    }
    found.amplitude = high;
    found.slope = height(core, before, direct, high) / (2 * high);
    return found;
}

double remanence(const CoreLoop& core, CoreLoop::Memory& memory, double field) {
    core.follow(memory, field);
    return core.follow(memory, 0).value;
}

double afterSweep(const CoreLoop& core, CoreLoop::Memory memory, double peak, double ratio) {
    double sign = 1;
    for (double now = peak; now > endOfSweep * peak; now *= ratio, sign = -sign) core.follow(memory, sign * now);
    return core.follow(memory, 0).value;
}

double demagnetisingField(const CoreLoop& core, const CoreLoop::Memory& magnetised, double ratio) {
    CoreLoop::Memory found = magnetised;
    const double left = std::abs(core.follow(found, 0).value);
    if (left == 0) return 0;
    const auto clears = [&](double peak) {
        return std::abs(afterSweep(core, magnetised, peak, ratio)) <= shareLeft * left;
    };
    double high = left / core.initialSlope();
    while (!clears(high) && high < 1e9) high *= 2;
    double low = high / 1e4;
    while (high > low * finenessOfPeak) {
        const double middle = std::sqrt(low * high);
        (clears(middle) ? high : low) = middle;
    }
    return high;
}

}  // namespace magnetics
