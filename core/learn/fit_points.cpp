// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured, as points of a fit.
#include <algorithm>
#include <cmath>

#include "analysis/between.h"
#include "learn/fit.h"
#include "learn/reading_model.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace learn {

using measured::CurveKind;
using units::joined;

namespace {

ProbeKind kindOf(CurveKind kind, bool relative) {
    if (kind == CurveKind::Impedance) return ProbeKind::Impedance;
    if (kind == CurveKind::ImpedanceAngle) return ProbeKind::ImpedanceAngle;
    return relative ? ProbeKind::Response : ProbeKind::Gain;
}

double valueAt(const measured::MeasuredCurve& curve, double f) {
    if (const auto value = analysis::between(curve.frequency, curve.value, f)) return *value;
    units::refuse(curve.name, "nothing at " + units::writeExact(units::Kind::Frequency, f), "a curve that reaches it");
}

/// Indices evenly over log f, each once.
std::vector<std::size_t> chosen(const std::vector<double>& frequency) {
    std::vector<std::size_t> all;
    if (frequency.size() <= mostCurvePoints) {
        for (std::size_t k = 0; k < frequency.size(); ++k) all.push_back(k);
        return all;
    }
    const double low = std::log(frequency.front()), high = std::log(frequency.back());
    for (std::size_t k = 0; k < mostCurvePoints; ++k) {
        const double wanted = low + (high - low) * static_cast<double>(k) / (mostCurvePoints - 1);
        const auto at = std::lower_bound(frequency.begin(), frequency.end(), std::exp(wanted) * (1 - 1e-9));
        const auto index = static_cast<std::size_t>(std::min(at, frequency.end() - 1) - frequency.begin());
        if (all.empty() || index > all.back()) all.push_back(index);
    }
    return all;
}

}  // namespace

std::vector<Probe> planProbes(const design::Design& design, const shop::PlanPrediction& prediction,
                              const shop::TestPlan& plan, const catalog::Catalog& shop,
                              const catalog::Tolerances& tolerances, const design::Fixture& fixture) {
    return nominalModel(design, prediction, plan, shop, tolerances, fixture).probes;
}

std::vector<Point> pointsOf(const std::vector<Probe>& probes, const Readings& readings) {
    const auto values = scaledReadings(probes, readings);
    std::vector<Point> all;
    for (std::size_t k = 0; k < probes.size(); ++k)
        if (std::isfinite(values[k]) && probes[k].kind != ProbeKind::Polarity)
            all.push_back({probes[k], unscaled(probes[k], values[k])});
    return all;
}

std::vector<Point> pointsOf(const measured::MeasuredCurve& curve, const design::Design& design,
                            const design::HookUp& hookUp, const std::string& port, double doubt,
                            std::optional<double> relativeTo) {
    const bool response = curve.kind == CurveKind::Response;
    if (!response && curve.kind != CurveKind::Impedance && curve.kind != CurveKind::ImpedanceAngle) return {};
    const double zero = response && relativeTo ? valueAt(curve, *relativeTo) : 0;
    std::vector<Point> all;
    for (const std::size_t k : chosen(curve.frequency)) {
        Point point;
        Probe& probe = point.probe;
        probe.kind = kindOf(curve.kind, response && relativeTo);
        probe.name =
            joined({measured::word(curve.kind), " at ", units::writeExact(units::Kind::Frequency, curve.frequency[k])});
        probe.words = probe.name;
        probe.a = hookUp.name;
        probe.b = port;
        probe.frequency = curve.frequency[k];
        if (relativeTo) probe.reference = *relativeTo;
        probe.hookUp = hookUp;
        probe.ports = design.ports;
        probe.instrument = response ? doubt * slope(probe, 0) : doubt;
        point.reading = curve.value[k] - zero;
        // Far below what is read, so that the scale is the logarithm.
        probe.floor = std::max(1e-6 * std::abs(point.reading), 1e-12);
        if (response && relativeTo && probe.frequency == *relativeTo) continue;
        all.push_back(std::move(point));
    }
    return all;
}

}  // namespace learn
