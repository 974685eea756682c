// SPDX-License-Identifier: GPL-3.0-or-later
// Where the stack's apparent permeability gives way.
#include <algorithm>
#include <cmath>
#include <limits>

#include "magnetics/permeability.h"
#include "magnetics/saturation.h"

namespace magnetics {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double shareOfGreatest = 0.2;     // of the apparent permeability
constexpr double shareOfSaturation = 0.95;  // of a block's saturation
constexpr double faintestField = 1e-4;      // A/m, well inside every alloy's initial range
constexpr double strongestField = 1e8;      // A/m, where every alloy is air
constexpr int stepsPerDecade = 16;

double apparent(const CoreModel& core, double field) {
    return meanFlux(core, field) / (mu0 * field);
}

/// Halves [low, high] in the logarithm until `reached` holds at `high` only.
template <class Reached>
double boundary(double low, double high, const Reached& reached) {
    for (int round = 0; round < 80 && high > low * (1 + 1e-13); ++round) {
        const double middle = std::sqrt(low * high);
        (reached(middle) ? high : low) = middle;
    }
    return high;
}

/// Applied field at which the first block reaches its share of saturation; infinite if none is known to.
double saturatingField(const CoreModel& core) {
    double first = infinite;
    for (const StackBlock& block : core.blocks) {
        if (block.share <= 0 || block.saturation <= 0) continue;
        const double flux = shareOfSaturation * block.saturation;
        const auto reached = [&](double field) { return blockFlux(core, block, field) >= flux; };
        if (reached(strongestField)) first = std::min(first, boundary(faintestField, strongestField, reached));
    }
    return first;
}

/// Greatest apparent permeability between neighbours of a coarse peak at `field` (golden section in the logarithm).
double greatestNear(const CoreModel& core, double field, double step) {
    const double golden = 0.6180339887498949;
    double low = field / step;
    double high = field * step;
    for (int round = 0; round < 40; ++round) {
        const double width = std::pow(high / low, golden);
        if (apparent(core, high / width) < apparent(core, low * width))
            low = high / width;
        else
            high = low * width;
    }
    return apparent(core, std::sqrt(low * high));
}

/// Applied field below `limit` beyond the peak at which the apparent permeability has fallen to its share; else
/// `limit`.
double yieldingField(const CoreModel& core, double limit) {
    const double end = std::min(limit, strongestField);
    const double step = std::pow(10.0, 1.0 / stepsPerDecade);
    double peakField = faintestField;
    double peak = apparent(core, peakField);
    for (double field = faintestField * step; field < end; field *= step)
        if (const double now = apparent(core, field); now > peak) {
            peak = now;
            peakField = field;
        }
    peak = std::max(peak, greatestNear(core, peakField, step));
    if (peak <= 0) return limit;  // no sheets
    const auto fallen = [&](double field) { return apparent(core, field) <= shareOfGreatest * peak; };
    for (double field = peakField; field < end; field *= step)
        if (const double next = std::min(field * step, end); fallen(next)) return boundary(field, next, fallen);
    return limit;
}

}  // namespace

double kneeFlux(const CoreModel& core, double directField) noexcept {
    const double field = yieldingField(core, saturatingField(core));
    if (!std::isfinite(field)) return infinite;
    return std::max(0.0, meanFlux(core, field) - std::abs(meanFlux(core, directField)));
}

}  // namespace magnetics
