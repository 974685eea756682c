// SPDX-License-Identifier: GPL-3.0-or-later
// What a whole run says.
#pragma once

#include "spread/intervals.h"
#include "spread/run.h"
#include "spread/shares.h"

namespace spread {

/// A run without its design: what every part of it carries.
struct Head {
    std::string design;        ///< its name
    std::string designDigest;  ///< of its canonical text
    std::string program;
    std::uint64_t units = 0, seed = 0, lotSize = 1;
    std::vector<analysis::Column> columns;
    std::vector<std::optional<double>> atLeast, atMost;  ///< a column each: the promise's limits
    std::vector<Varying> varying;
    std::vector<double> frequencies;  ///< of the response
    Expansion expansion;
    bool operator==(const Head&) const = default;
};
[[nodiscard]] Head headOf(const design::Design& design, const std::string& designDigest, const std::string& program,
                          const Study& study);

/// Kept units of those that were judged, with the 95 % interval of the share.
struct Yield {
    std::size_t kept = 0, judged = 0;
    Interval interval;
};

/// Limits that hold for a stated share of all units with a stated confidence, whatever the distribution; units taken as
/// independent. A promise with one limit is bounded on that side alone.
struct Limits {
    double coverage = 0.99, confidence = 0.95;
    std::optional<double> low, high;
    double reached = 0;   ///< confidence of the ranks taken
    double guard = 0;     ///< half width of a measurement, in the column's unit
    std::string missing;  ///< why there are none, "" if there are
};

struct Histogram {
    double from = 0, width = 0;
    std::vector<std::size_t> units;
};

/// One column over all units.
struct ColumnSummary {
    std::size_t occurs = 0;  ///< units that have a value
    double mean = 0, deviation = 0, least = 0, greatest = 0;
    std::vector<double> quantiles;  ///< at `quantileShares`
    Histogram histogram;
    std::optional<Yield> yield;  ///< where it is promised
    Limits limits;
    VarianceShares shares;
};
inline constexpr std::array<double, 7> quantileShares{0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99};

struct Summary {
    std::vector<ColumnSummary> columns;
    std::optional<Yield> together;  ///< all promises and masks that could be judged
    std::vector<Cause> causes;
    std::vector<std::vector<double>> bands;  ///< a frequency each, dB at `quantileShares`, within `binWidth`
};

/// Half width of a measurement: 1 % of the value; 0.1 dB in dB and dBu (common practice, no source).
[[nodiscard]] double measurementGuard(const std::string& unit, double value) noexcept;

/// What values say of themselves, without limits or shares; they are left in order of size.
[[nodiscard]] ColumnSummary described(std::vector<double>& values);

/// Sums up batches that follow each other and are the whole run: sums run in the order of the units.
[[nodiscard]] Summary summed(const Head& head, const std::vector<Batch>& batches);

}  // namespace spread
