// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/statistics.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "measured/quantiles.h"
#include "spread/normal.h"

namespace measured {

namespace {

std::optional<double> andersonDarling(std::vector<double> values, const Sample& sample) {
    constexpr std::size_t fewest = 8;
    if (sample.count < fewest || !(sample.deviation > 0)) return {};
    std::sort(values.begin(), values.end());
    const auto n = static_cast<double>(sample.count);
    const auto below = [&](std::size_t k) {
        constexpr double least = 1e-300;  // the logarithm of a reading many deviations away
        return std::log(std::max(least, spread::normalProbability((values[k] - sample.mean) / sample.deviation)));
    };
    const auto above = [&](std::size_t k) {
        constexpr double least = 1e-300;
        return std::log(std::max(least, spread::normalProbability((sample.mean - values[k]) / sample.deviation)));
    };
    double sum = 0;
    for (std::size_t k = 0; k < values.size(); ++k)
        sum += (2.0 * static_cast<double>(k) + 1) * (below(k) + above(values.size() - 1 - k));
    return (-n - sum / n) * (1 + 0.75 / n + 2.25 / (n * n));
}

}  // namespace

Sample sampleOf(const std::vector<double>& values) noexcept {
    Sample s;
    s.count = values.size();
    if (values.empty()) return s;
    const auto n = static_cast<double>(values.size());
    long double sum = 0;
    for (const double value : values) sum += value;
    const long double mean = sum / n;
    long double squares = 0, rest = 0;
    for (const double value : values) {
        const long double from = value - mean;
        squares += from * from;
        rest += from;
    }
    s.mean = static_cast<double>(mean);
    if (values.size() > 1)
        s.deviation = static_cast<double>(std::sqrt(std::max(0.0L, (squares - rest * rest / n) / (n - 1))));
    const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
    s.least = *least;
    s.greatest = *greatest;
    return s;
}

Distribution distributionOf(const std::vector<double>& values, double confidence) {
    Distribution d;
    d.sample = sampleOf(values);
    d.confidence = confidence;
    d.mean = {d.sample.mean, d.sample.mean};
    if (d.sample.count < 2) return d;
    const auto n = static_cast<double>(d.sample.count);
    const double tail = (1 - confidence) / 2, freedom = n - 1;
    const double half = studentQuantile(1 - tail, freedom) * d.sample.deviation / std::sqrt(n);
    d.mean = {d.sample.mean - half, d.sample.mean + half};
    d.deviation = {d.sample.deviation * std::sqrt(freedom / chiSquaredQuantile(1 - tail, freedom)),
                   d.sample.deviation * std::sqrt(freedom / chiSquaredQuantile(tail, freedom))};
    d.andersonDarling = andersonDarling(values, d.sample);
    return d;
}

std::optional<Capability> capability(const Sample& sample, std::optional<double> atLeast, std::optional<double> atMost,
                                     double confidence) {
    if (sample.count < 2 || !(sample.deviation > 0) || (!atLeast && !atMost)) return {};
    const auto n = static_cast<double>(sample.count);
    const double tail = (1 - confidence) / 2, s = sample.deviation;
    Capability c;
    if (atLeast && atMost) {
        c.cp = (*atMost - *atLeast) / (6 * s);
        c.cpInterval = {*c.cp * std::sqrt(chiSquaredQuantile(tail, n - 1) / (n - 1)),
                        *c.cp * std::sqrt(chiSquaredQuantile(1 - tail, n - 1) / (n - 1))};
    }
    const double below = atLeast ? (sample.mean - *atLeast) / s : HUGE_VAL;
    const double above = atMost ? (*atMost - sample.mean) / s : HUGE_VAL;
    c.cpk = std::min(below, above) / 3;
    const double half = spread::normalQuantile(1 - tail) * std::sqrt(1 / (9 * n) + c.cpk * c.cpk / (2 * (n - 1)));
    c.cpkInterval = {c.cpk - half, c.cpk + half};
    c.outside = spread::normalProbability(-below) + spread::normalProbability(-above);
    return c;
}

std::vector<Share> pareto(const std::vector<std::pair<std::string, std::size_t>>& causes) {
    std::map<std::string, std::size_t> counted;
    std::size_t all = 0;
    for (const auto& [cause, units] : causes) {
        counted[cause] += units;
        all += units;
    }
    std::vector<Share> shares;
    for (const auto& [cause, units] : counted)
        if (units > 0) shares.push_back({cause, units, static_cast<double>(units) / static_cast<double>(all), 0});
    std::stable_sort(shares.begin(), shares.end(), [](const Share& a, const Share& b) { return a.units > b.units; });
    double sum = 0;
    for (Share& share : shares) share.cumulative = sum += share.share;
    return shares;
}

}  // namespace measured
