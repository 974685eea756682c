// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/spread_json.h"

#include <cmath>

#include "exchange/spread_fields.h"
#include "spread/spread_words.h"

namespace exchange {

using json::Value;

namespace {

Value finite(double value) {
    return std::isfinite(value) ? Value(value) : Value();
}
Value finite(const std::optional<double>& value) {
    return value ? finite(*value) : Value();
}

Value yieldJson(const spread::Yield& yield) {
    Value one;
    one["kept"] = yield.kept;
    one["judged"] = yield.judged;
    one["share"] =
        yield.judged > 0 ? finite(static_cast<double>(yield.kept) / static_cast<double>(yield.judged)) : Value();
    one["interval_95"] = Value::array({yield.interval.low, yield.interval.high});
    return one;
}

Value limitsJson(const spread::Limits& limits) {
    Value one;
    one["coverage"] = limits.coverage;
    one["confidence"] = limits.confidence;
    if (!limits.missing.empty()) {
        one["missing"] = limits.missing;
        return one;
    }
    one["confidence_reached"] = limits.reached;
    one["guard_band"] = limits.guard;
    const auto side = [&](const char* name, double guards) {
        const auto moved = [&](const std::optional<double>& bound, double by) {
            return bound ? finite(*bound + by * limits.guard) : Value();
        };
        one[name] = Value::array({moved(limits.low, -guards), moved(limits.high, guards)});
    };
    side("units_within", 0);
    side("test_limits", 1);
    side("datasheet_limits", 2);
    return one;
}

/// Causes of a thousandth of the variance or more, greatest first.
Value sharesJson(const spread::VarianceShares& shares, const std::vector<spread::Cause>& causes) {
    constexpr double least = 1e-3;
    Value one;
    if (!shares.enough) {
        one["missing"] = "too few units, or no variance";
        return one;
    }
    one["explained"] = shares.explained;
    one["squares"] = shares.squares;
    Value list = Value::array();
    for (const std::size_t k : spread::rankedCauses(shares, least))
        list.push_back({{"cause", causes[k].name}, {"share", shares.share[k]}});
    one["causes"] = std::move(list);
    return one;
}

Value columnJson(const spread::Head& head, std::size_t k, const spread::Summary& summary) {
    const auto& column = head.columns[k];
    const auto& sum = summary.columns[k];
    Value one;
    one["name"] = column.name;
    one["promise"] = column.text;
    one["unit"] = column.unit;
    one["told"] = column.mask ? "margin" : "value";
    one["nominal"] = finite(column.nominal);
    if (head.expansion.units > 0) one["expansion_off"] = finite(head.expansion.worst[k]);
    if (sum.yield) one["yield"] = yieldJson(*sum.yield);
    one["occurs"] = sum.occurs;
    if (sum.occurs > 0) {
        one["mean"] = finite(sum.mean);
        one["deviation"] = finite(sum.deviation);
        one["least"] = finite(sum.least);
        one["greatest"] = finite(sum.greatest);
        one["quantiles"] = sum.quantiles;
        one["histogram"] = {{"from", finite(sum.histogram.from)},
                            {"width", finite(sum.histogram.width)},
                            {"units", sum.histogram.units}};
    }
    one["limits"] = limitsJson(sum.limits);
    one["variance"] = sharesJson(sum.shares, summary.causes);
    return one;
}

Value headJson(const spread::Head& head) {
    Value all;
    all["design"] = head.design;
    all["digest"] = head.designDigest;
    all["program"] = head.program;
    return all;
}

}  // namespace

Value spreadJson(const spread::Head& head, const spread::Summary& summary) {
    Value all = headJson(head);
    all["units"] = head.units;
    all["seed"] = head.seed;
    all["lot_size"] = head.lotSize;
    all["units_checked_against_own_fields"] = head.expansion.units;
    all["quantiles_at"] = spread::quantileShares;
    if (summary.together) all["yield_together"] = yieldJson(*summary.together);
    all["columns"] = Value::array();
    for (std::size_t k = 0; k < head.columns.size(); ++k) all["columns"].push_back(columnJson(head, k, summary));
    Value bands = Value::array();
    for (std::size_t f = 0; f < head.frequencies.size(); ++f)
        if (!summary.bands[f].empty())
            bands.push_back({{"frequency", head.frequencies[f]}, {"quantiles_dB", summary.bands[f]}});
    all["response"] = std::move(bands);
    all["varying"] = Value::array();
    for (const auto& v : head.varying) all["varying"].push_back(json::writeRecord(v));
    return all;
}

Value sensitivityJson(const spread::Head& head, const std::vector<std::vector<spread::Slope>>& slopes) {
    Value all = headJson(head);
    all["sensitivities"] = Value::array();
    for (std::size_t c = 0; c < slopes.size(); ++c) {
        Value list = Value::array();
        for (const auto& slope : slopes[c]) {
            const auto& varying = head.varying[slope.varying];
            list.push_back({{"of", varying.name},
                            {"place", varying.place},
                            {"derivative", finite(slope.derivative)},
                            {"effect_of_one_deviation", finite(slope.effect)}});
        }
        all["sensitivities"].push_back({{"name", head.columns[c].name},
                                        {"promise", head.columns[c].text},
                                        {"unit", head.columns[c].unit},
                                        {"told", head.columns[c].mask ? "margin" : "value"},
                                        {"to", std::move(list)}});
    }
    return all;
}

}  // namespace exchange
