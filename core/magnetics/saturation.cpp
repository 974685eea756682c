// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/saturation.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "magnetics/monotone_curve.h"
#include "magnetics/permeability.h"

namespace magnetics {
namespace {

constexpr double faraday = 2 * std::numbers::pi / std::numbers::sqrt2;

double secant(const std::vector<catalog::BhPoint>& curve, std::size_t i) {
    return (curve[i + 1].flux - curve[i].flux) / (curve[i + 1].field - curve[i].field);
}

/// Slope of the monotone cubic at point i: inside, the weighted harmonic mean of both secants (Fritsch and Butland);
/// at the ends the physical one, limited to three secants, up to which a cubic stays monotone (Fritsch and Carlson).
double knotSlope(const StackBlock& block, std::size_t i) {
    const std::vector<catalog::BhPoint>& curve = block.curve;
    if (i == 0) return std::min(mu0 * block.initialPermeability, 3 * secant(curve, 0));
    if (i + 1 == curve.size()) return std::min(mu0, 3 * secant(curve, i - 1));
    return innerSlope(curve[i].field - curve[i - 1].field, secant(curve, i - 1), curve[i + 1].field - curve[i].field,
                      secant(curve, i));
}

CurvePlace onPoints(const StackBlock& block, double field) {
    const std::vector<catalog::BhPoint>& curve = block.curve;
    const auto above = std::upper_bound(curve.begin(), curve.end(), field,
                                        [](double h, const catalog::BhPoint& point) { return h < point.field; });
    if (above == curve.end()) return {curve.back().flux + mu0 * (field - curve.back().field), mu0};
    const std::size_t i = static_cast<std::size_t>(above - curve.begin()) - 1;
    return CurvePiece{curve[i].field,     curve[i].flux,     knotSlope(block, i),
                      curve[i + 1].field, curve[i + 1].flux, knotSlope(block, i + 1)}
        .at(field);
}

/// Place on the alloy's curve at field >= 0.
CurvePlace onCurve(const StackBlock& block, double field) {
    if (block.curve.size() >= 2) return onPoints(block, field);
    const double excess = mu0 * (block.initialPermeability - 1);
    if (block.saturation <= 0) return {(mu0 + excess) * field, mu0 + excess};
    const double scale = std::numbers::pi * excess / (2 * block.saturation);
    const double x = scale * field;
    return {mu0 * field + 2 / std::numbers::pi * block.saturation * std::atan(x), mu0 + excess / (1 + x * x)};
}

}  // namespace

double voltageAtFlux(double frequency, double turns, double area, double flux) noexcept {
    return faraday * frequency * turns * area * flux;
}

double fluxAtVoltage(double volts, double frequency, double turns, double area) noexcept {
    return volts / (faraday * frequency * turns * area);
}

double fluxAtField(const StackBlock& block, double field) noexcept {
    return curveAtField(block, field).value;
}

CurvePlace curveAtField(const StackBlock& block, double field) noexcept {
    const CurvePlace place = onCurve(block, std::abs(field));
    return {std::copysign(place.value, field), place.slope};
}

double blockFlux(const CoreModel& core, const StackBlock& block, double appliedField) noexcept {
    const double air = core.gap / (mu0 * core.pathLength);
    const double applied = std::abs(appliedField);
    if (air <= 0) return fluxAtField(block, appliedField);
    // H + air B(H) = applied rises steadily with H: Newton's step where it stays inside the bracket and the step before
    // halved the lack, else halving.
    double low = 0;
    double high = applied;
    double field = applied / (1 + air * onCurve(block, 0).slope);
    double before = 2 * applied;
    for (int round = 0; round < 200 && high - low > 1e-15 * high; ++round) {
        const CurvePlace place = onCurve(block, field);
        const double excess = field + air * place.value - applied;
        if (std::abs(excess) <= 1e-14 * applied) break;
        (excess > 0 ? high : low) = field;
        const double next = field - excess / (1 + air * place.slope);
        field = next > low && next < high && std::abs(excess) <= before / 2 ? next : (low + high) / 2;
        before = std::abs(excess);
    }
    return std::copysign(onCurve(block, field).value, appliedField);
}

double meanFlux(const CoreModel& core, double appliedField) noexcept {
    double sum = 0;
    for (const StackBlock& block : core.blocks) sum += block.share * blockFlux(core, block, appliedField);
    return sum;
}

}  // namespace magnetics
