// SPDX-License-Identifier: GPL-3.0-or-later
// Promises made in the customer's hook-up, in the fixture's terms.
#include <algorithm>
#include <cmath>
#include <set>

#include "analysis/promise.h"
#include "shop/curve_value.h"
#include "shop/plan_rows.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

const double halfPower = 10 * std::log10(0.5);

bool first(const design::Design& design, const std::string& hookUp) {
    return hookUp.empty() || hookUp == design.hookUps.front().name;
}

/// Tightens one side.
void atLeast(Promised& all, double limit) {
    if (!all.atLeast || limit > *all.atLeast) all.atLeast = limit;
}
void atMost(Promised& all, double limit) {
    if (!all.atMost || limit < *all.atMost) all.atMost = limit;
}

/// A limit in the customer's hook-up moved to the bench, and drawn in by the doubt of what it was moved by.
struct Move {
    double there = 0, here = 0;  ///< the figure at the customer's and on the bench
    double doubt = 0;            ///< model's, as `units::Figure::uncertainty`
    bool decibels = false;
    [[nodiscard]] double moved(double limit, double inward) const {
        if (decibels) return limit + (here - there) + inward * std::min(doubt, std::abs(here - there));
        return limit * (here / there) * (1 + inward * doubt * std::abs(here / there - 1));
    }
};

/// A promised end of the band that the response at its frequency proves.
bool provedAt(const design::Promise& promise, const design::Design& design, double& frequency) {
    if (!first(design, promise.hookUp)) return false;
    if (promise.figure == "low_3dB" && promise.atMost && !promise.atLeast)
        frequency = *promise.atMost;
    else if (promise.figure.starts_with("high_3dB") && promise.atLeast && !promise.atMost)
        frequency = *promise.atLeast;
    else
        return false;
    return true;
}

bool inRange(const design::Fixture& fixture, double f) {
    return f >= fixture.generator.lowest && f <= fixture.generator.highest;
}

}  // namespace

Promised transferred(const PlanContext& context, const BenchState& state, const std::string& figure,
                     const std::string& hookUp, std::set<std::size_t>& measured) {
    Promised all;
    const auto& promises = context.design.brief.promises;
    for (std::size_t k = 0; k < promises.size(); ++k) {
        const auto& promise = promises[k];
        const std::string own = promise.figure + (promise.port.empty() ? "" : "." + promise.port);
        if (own != figure) continue;
        if (promise.hookUp != hookUp && !(first(context.design, promise.hookUp) && first(context.design, hookUp)))
            continue;
        const std::string name = first(context.design, hookUp) ? own : joined({own, "@", hookUp});
        const auto *there = context.answer.figure(name), *here = state.answer->figure(name);
        if (there == nullptr || here == nullptr || !std::isfinite(there->value) || !std::isfinite(here->value))
            continue;
        const units::Kind kind = units::kindOfUnit(here->unit);
        const Move move{there->value, here->value, here->uncertainty, units::inDecibels(here->unit)};
        if (promise.atLeast) atLeast(all, move.moved(*promise.atLeast, 1));
        if (promise.atMost) atMost(all, move.moved(*promise.atMost, -1));
        all.words = joined({"promised to the customer, moved by what is predicted to differ between his hook-up (",
                            units::write(kind, there->value, 4), ") and the fixture (",
                            units::write(kind, here->value, 4), ")"});
        measured.insert(k);
    }
    return all;
}

Promised maskAt(const PlanContext& context, const AtFrequency& bench) {
    Promised all;
    const auto* trace = context.answer.trace("response");
    if (trace == nullptr || trace->curves.empty()) return all;
    const double f = bench.frequency;
    const double there = valueAt(*trace, trace->curves.front(), f) - valueAt(*trace, trace->curves.front(), 1000);
    const Move move{there, bench.expected.value, 0.1, true};
    if (!std::isfinite(there) || !std::isfinite(bench.expected.value)) return all;
    for (const auto& mask : context.design.brief.masks) {
        if (mask.trace != "response" || !first(context.design, mask.hookUp)) continue;
        if (const auto low = analysis::maskLimit(mask, f, true)) atLeast(all, move.moved(*low, 1));
        if (const auto high = analysis::maskLimit(mask, f, false)) atMost(all, move.moved(*high, -1));
    }
    bool edge = false;
    for (const auto& promise : context.design.brief.promises)
        if (double at = 0; provedAt(promise, context.design, at) && at == f) {
            atLeast(all, move.moved(halfPower, 1));
            edge = true;
        }
    if (!all.atLeast && !all.atMost) return all;
    all.words = joined({edge ? "a promised end of the band lies here (−3 dB)" : "the customer's mask",
                        ", moved by what is predicted to differ between his hook-up (",
                        units::write(units::Kind::Decibel, there, 3), ") and the fixture (",
                        units::write(units::Kind::Decibel, bench.expected.value, 3), ")"});
    return all;
}

std::vector<double> responsePoints(const design::Design& design, const design::Fixture& fixture) {
    constexpr double bandLow = 20, bandHigh = 20e3, reference = 1000;
    std::set<double> all{std::max(bandLow, fixture.generator.lowest), std::min(bandHigh, fixture.generator.highest)};
    for (const auto& mask : design.brief.masks)
        if (mask.trace == "response" && first(design, mask.hookUp))
            for (const auto& point : mask.points) all.insert(point.frequency);
    for (const auto& promise : design.brief.promises)
        if (double at = 0; provedAt(promise, design, at)) all.insert(at);
    std::vector<double> points;
    for (const double f : all)
        if (f != reference && inRange(fixture, f)) points.push_back(f);
    return points;
}

void noteProvedEdges(const PlanContext& context, std::set<std::size_t>& measured) {
    const auto& promises = context.design.brief.promises;
    for (std::size_t k = 0; k < promises.size(); ++k)
        if (double at = 0; provedAt(promises[k], context.design, at) && inRange(context.fixture, at))
            measured.insert(k);
}

}  // namespace shop
