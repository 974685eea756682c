// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/bands.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <mutex>

#include "analysis/chosen_traces.h"
#include "analysis/in_threads.h"
#include "spread/intervals.h"

namespace spread {

namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
constexpr int pointsOverFrequency = 141;  // twenty a decade from 0.1 Hz to 1 MHz

using Traces = std::vector<std::shared_ptr<const analysis::Trace>>;

/// The value at `x` by a straight line between neighbours; not a number outside.
double valueAt(const std::vector<double>& axis, const std::vector<double>& y, double x) {
    const auto above = std::lower_bound(axis.begin(), axis.end(), x);
    if (above == axis.end() || y.size() != axis.size()) return unknown;
    const auto k = static_cast<std::size_t>(above - axis.begin());
    if (*above == x) return y[k];
    if (k == 0) return unknown;
    return y[k - 1] + (y[k] - y[k - 1]) * (x - axis[k - 1]) / (axis[k] - axis[k - 1]);
}

/// A curve of every unit, read at the band's places.
std::vector<double> valuesOf(const Traces& unit, const TraceBand& band, const std::string& curve) {
    const auto trace = std::find_if(unit.begin(), unit.end(), [&](const auto& t) { return t->name == band.trace; });
    std::vector<double> values(band.at.size(), unknown);
    const auto* found = trace == unit.end() ? nullptr : (*trace)->curve(curve);
    if (found == nullptr) return values;
    for (std::size_t k = 0; k < values.size(); ++k) {
        const double value = valueAt((*trace)->frequency, found->y, band.at[k]);
        if (std::isfinite(value)) values[k] = found->shown(value);
    }
    return values;
}

CurveBand curveBandOf(const std::vector<Traces>& units, const TraceBand& band, const std::string& curve) {
    std::vector<std::vector<double>> all;
    all.reserve(units.size());
    for (const auto& unit : units) all.push_back(valuesOf(unit, band, curve));
    CurveBand made{curve, {}, {}, {}};
    for (std::size_t k = 0; k < band.at.size(); ++k) {
        std::vector<double> here;
        for (const auto& values : all)
            if (std::isfinite(values[k])) here.push_back(values[k]);
        std::sort(here.begin(), here.end());
        const bool known = 2 * here.size() > units.size();
        constexpr double half = 0.5;
        made.low.push_back(known ? quantile(here, bandShares[0]) : unknown);
        made.middle.push_back(known ? quantile(here, half) : unknown);
        made.high.push_back(known ? quantile(here, bandShares[1]) : unknown);
    }
    return made;
}

/// The nominal's axis; over frequency fewer points do.
std::vector<double> placesOf(const analysis::Trace& trace, const std::vector<double>& frequencies) {
    return trace.axis.isFrequency() ? frequencies : trace.frequency;
}

}  // namespace

std::vector<TraceBand> bands(const Study& study, const catalog::Catalog& shop, const analysis::Answer& nominal,
                             const std::vector<std::string>& traces, std::uint64_t units, const std::stop_token& stop,
                             const Study::Progress& progress, unsigned threads) {
    std::vector<TraceBand> all;
    std::vector<std::string> wanted;
    if (nominal.traces.empty()) return all;
    const auto frequencies = analysis::logarithmicGrid(0.1, 1e6, pointsOverFrequency);
    for (const auto& name : traces)
        if (const auto* trace = nominal.trace(name)) {
            wanted.push_back(name);
            all.push_back({name, nominal.hookUp, trace->axis, placesOf(*trace, frequencies), {}});
        }
    units = std::min(units, study.plan().units);
    std::vector<Traces> made(units);
    std::mutex telling;
    std::uint64_t done = 0;
    analysis::inThreads(units, threads, stop, [&] {
        return [&, unit = UnitDesign(study.variation())](std::size_t k) mutable {
            made[k] = analysis::chosenTraces(unit.with(study.valuesOf(k)), shop, nominal, wanted, frequencies, stop);
            const std::lock_guard lock(telling);
            ++done;
            if (progress && !stop.stop_requested()) progress(done);
        };
    });
    if (stop.stop_requested()) return {};
    for (auto& band : all)
        for (const auto& curve : nominal.trace(band.trace)->curves)
            if (!curve.y.empty()) band.curves.push_back(curveBandOf(made, band, curve.name));
    return all;
}

}  // namespace spread
