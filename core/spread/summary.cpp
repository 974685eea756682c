// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/summary.h"

#include <algorithm>
#include <cmath>

namespace spread {

Head headOf(const design::Design& design, const std::string& designDigest, const std::string& program,
            const Study& study) {
    Head head{design.name,
              designDigest,
              program,
              study.plan().units,
              study.plan().seed,
              study.plan().lotSize,
              study.columns(),
              {},
              {},
              study.variation().all,
              study.plan().wanted.response,
              study.expansion()};
    for (const auto& column : head.columns) {
        const bool promised = column.promise >= 0 && !column.mask;
        const auto* promise = promised ? &design.brief.promises[static_cast<std::size_t>(column.promise)] : nullptr;
        head.atLeast.push_back(promise != nullptr ? promise->atLeast : std::nullopt);
        head.atMost.push_back(promise != nullptr ? promise->atMost : std::nullopt);
    }
    return head;
}

double measurementGuard(const std::string& unit, double value) noexcept {
    return units::inDecibels(unit) ? 0.1 : 0.01 * std::abs(value);
}

namespace {

Histogram histogramOf(const std::vector<double>& sorted) {
    constexpr std::size_t bins = 24;
    Histogram h;
    if (sorted.empty()) return h;
    h.from = sorted.front();
    h.width = (sorted.back() - sorted.front()) / bins;
    if (!(h.width > 0)) {
        h.units = {sorted.size()};
        return h;
    }
    h.units.assign(bins, 0);
    for (const double v : sorted) ++h.units[std::min(bins - 1, static_cast<std::size_t>((v - h.from) / h.width))];
    return h;
}

/// A figure that does not occur in some units has no limit on the side where those would lie, which is not known.
Limits limitsOf(const Head& head, std::size_t column, const std::vector<double>& sorted, std::size_t units) {
    Limits limits;
    if (sorted.size() < units) {
        limits.missing = "does not occur in every unit";
        return limits;
    }
    const bool mask = head.columns[column].mask;
    const bool least = head.atLeast[column].has_value() || mask, most = head.atMost[column].has_value();
    const bool one = least != most;
    const Ranks ranks =
        one ? oneSided(units, limits.coverage, limits.confidence) : twoSided(units, limits.coverage, limits.confidence);
    if (ranks.low == 0) {
        limits.missing = "too few units";
        return limits;
    }
    limits.reached = ranks.confidence;
    if (!one || least) limits.low = sorted[ranks.low - 1];
    if (!one || most) limits.high = sorted[ranks.high - 1];
    limits.guard = measurementGuard(head.columns[column].unit, limits.low.value_or(limits.high.value_or(0)));
    return limits;
}

Yield yieldOf(std::size_t kept, std::size_t judged) {
    return {kept, judged, wilson(kept, judged)};
}

/// Values of every unit in order, as the batches follow each other.
struct Rows {
    std::vector<const std::vector<double>*> values;
    std::vector<const std::string*> kept;
};

ColumnSummary columnOf(const Head& head, std::size_t column, const Rows& rows) {
    std::vector<double> values;
    std::size_t kept = 0, judged = 0;
    for (std::size_t k = 0; k < rows.values.size(); ++k) {
        const char letter = (*rows.kept[k])[column];
        judged += letter != '-' ? 1U : 0U;
        kept += letter == 'k' ? 1U : 0U;
        if (const double value = (*rows.values[k])[column]; std::isfinite(value)) values.push_back(value);
    }
    ColumnSummary sum = described(values);
    if (head.columns[column].promise >= 0) sum.yield = yieldOf(kept, judged);
    sum.limits = limitsOf(head, column, values, rows.values.size());
    return sum;
}

/// Variance shares of every column: those with a value in every unit together, each other one by its own units.
void addShares(const Rows& rows, const Draws& draws, std::vector<ColumnSummary>& columns) {
    const std::size_t units = rows.values.size();
    std::vector<std::vector<double>> numbers(units);
    for (std::size_t k = 0; k < units; ++k) numbers[k] = draws.standards(k);
    std::vector<std::size_t> whole;
    std::vector<std::vector<double>> values;
    for (std::size_t c = 0; c < columns.size(); ++c) {
        std::vector<double> own;
        std::vector<std::vector<double>> itsNumbers;
        const bool every = columns[c].occurs == units;
        for (std::size_t k = 0; k < units; ++k) {
            const double value = (*rows.values[k])[c];
            if (!std::isfinite(value)) continue;
            own.push_back(value);
            if (!every) itsNumbers.push_back(numbers[k]);
        }
        if (every) {
            whole.push_back(c);
            values.push_back(std::move(own));
        } else {
            columns[c].shares = sharesOf(regressions(itsNumbers, {own}).front(), draws.causes());
        }
    }
    const auto all = regressions(numbers, values);
    for (std::size_t i = 0; i < whole.size(); ++i) columns[whole[i]].shares = sharesOf(all[i], draws.causes());
}

std::optional<Yield> togetherOf(const Rows& rows) {
    std::size_t kept = 0, judged = 0;
    for (const auto* letters : rows.kept) {
        if (letters->find_first_of("kb") == std::string::npos) continue;
        ++judged;
        kept += letters->find('b') == std::string::npos ? 1U : 0U;
    }
    return judged > 0 ? std::optional(yieldOf(kept, judged)) : std::nullopt;
}

std::vector<double> bandOf(const Bins& bins) {
    std::uint64_t all = 0;
    for (const auto& [bin, units] : bins) all += units;
    std::vector<double> levels;
    if (all == 0) return levels;
    for (const double q : quantileShares) {
        const auto wanted = static_cast<std::uint64_t>(q * static_cast<double>(all - 1));
        std::uint64_t sum = 0;
        for (const auto& [bin, units] : bins)
            if ((sum += units) > wanted) {
                levels.push_back(static_cast<double>(bin) / 100);  // 1 / binWidth, without its rounding
                break;
            }
    }
    return levels;
}

}  // namespace

ColumnSummary described(std::vector<double>& values) {
    ColumnSummary sum;
    sum.occurs = values.size();
    for (const double v : values) sum.mean += v;
    if (!values.empty()) sum.mean /= static_cast<double>(values.size());
    for (const double v : values) sum.deviation += (v - sum.mean) * (v - sum.mean);
    sum.deviation = values.size() > 1 ? std::sqrt(sum.deviation / static_cast<double>(values.size() - 1)) : 0;
    std::sort(values.begin(), values.end());
    if (!values.empty()) {
        sum.least = values.front();
        sum.greatest = values.back();
        for (const double q : quantileShares) sum.quantiles.push_back(quantile(values, q));
    }
    sum.histogram = histogramOf(values);
    return sum;
}

Summary summed(const Head& head, const std::vector<Batch>& batches) {
    Rows rows;
    std::vector<Bins> bins(head.frequencies.size());
    for (const auto& batch : batches) {
        for (const auto& unit : batch.values) rows.values.push_back(&unit);
        for (const auto& unit : batch.kept) rows.kept.push_back(&unit);
        for (std::size_t f = 0; f < bins.size(); ++f)
            for (const auto& [bin, units] : batch.response[f]) bins[f][bin] += units;
    }
    const Draws draws(drawnOf(head.varying), head.seed, head.lotSize);
    Summary all;
    all.causes = draws.causes();
    for (std::size_t c = 0; c < head.columns.size(); ++c) all.columns.push_back(columnOf(head, c, rows));
    addShares(rows, draws, all.columns);
    all.together = togetherOf(rows);
    for (const auto& one : bins) all.bands.push_back(bandOf(one));
    return all;
}

}  // namespace spread
