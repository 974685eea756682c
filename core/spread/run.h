// SPDX-License-Identifier: GPL-3.0-or-later
// Units made as a shop would make them, each computed.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <stop_token>
#include <string>
#include <vector>

#include "analysis/alike.h"
#include "spread/draws.h"
#include "spread/varying.h"

namespace spread {

/// Which units are asked for, and what of them.
struct Plan {
    std::uint64_t units = 1000;
    std::uint64_t seed = 1;
    std::uint64_t lotSize = 20;  ///< units of a lot follow each other
    bool exact = false;          ///< every unit's fields anew, instead of by expansion about the nominal
    analysis::Wanted wanted;
    bool operator==(const Plan&) const = default;
};

/// How many units had a level at a frequency in each bin of `binWidth` dB: sums of parts are those of the whole.
inline constexpr double binWidth = 0.01;
using Bins = std::map<std::int64_t, std::uint64_t>;

/// Units `first` up to before `last` of a run.
struct Batch {
    std::uint64_t first = 0, last = 0;
    std::vector<std::vector<double>> values;  ///< a unit each, a column each; not a number: does not occur
    std::vector<std::string> kept;            ///< a unit each, a letter a column: "k" kept, "b" broken, "-" not judged
    std::vector<Bins> response;               ///< a frequency each
    bool stopped = false;                     ///< then the rest means nothing
    bool operator==(const Batch&) const = default;
};

/// How far units by expansion stand from the same units with fields of their own.
struct Expansion {
    std::uint64_t units = 0;    ///< that were computed both ways; 0: nothing is expanded
    std::vector<double> worst;  ///< a column each, in its unit; -1: occurs one way alone
    bool operator==(const Expansion&) const = default;
    /// One more unit, both ways.
    void take(const analysis::Found& quick, const analysis::Found& own);
};

/// What all units of a run have in common.
class Study {
public:
    /// `design` is checked; `shop` must outlive this. Throws units::BadInput for a wanted figure that is none. Stopped,
    /// it is good for nothing.
    Study(const design::Design& design, const catalog::Catalog& shop, const catalog::Tolerances& tolerances, Plan plan,
          const std::stop_token& stop = {});
    /// Called from any of the threads, one at a time, with the number of units done.
    using Progress = std::function<void(std::uint64_t done)>;
    /// On as many threads as told (0: as the machine has); the result is the same for any number.
    [[nodiscard]] Batch run(std::uint64_t first, std::uint64_t last, const std::stop_token& stop = {},
                            const Progress& progress = {}, unsigned threads = 0) const;
    /// One unit with a value for each that varies, its fields its own.
    [[nodiscard]] analysis::Found unit(const std::vector<double>& values) const;
    /// Units whose turns are those of the design are expanded, unless the plan or what is promised forbids it.
    [[nodiscard]] const Expansion& expansion() const noexcept { return expansion_; }

    /// What each number that varies is in a unit of the run.
    [[nodiscard]] std::vector<double> valuesOf(std::uint64_t unit) const;
    [[nodiscard]] const Plan& plan() const noexcept { return plan_; }
    [[nodiscard]] const Variation& variation() const noexcept { return variation_; }
    [[nodiscard]] const std::vector<analysis::Column>& columns() const noexcept { return alike_.columns(); }

private:
    Plan plan_;
    Variation variation_;
    analysis::Alike alike_;
    Draws draws_;
    std::vector<double> steps_;  // of each number, where units are expanded
    Expansion expansion_;
    void expand(const std::stop_token& stop);
    [[nodiscard]] std::vector<analysis::Alike::Sides> sides(UnitDesign& unit);
    [[nodiscard]] std::vector<std::vector<double>> compute(std::uint64_t from, std::uint64_t to, UnitDesign& unit,
                                                           Batch& batch, const std::stop_token& stop) const;
    [[nodiscard]] bool expanded(const std::vector<double>& values) const;
    [[nodiscard]] analysis::Found quickly(UnitDesign& unit, const std::vector<double>& values,
                                          const std::stop_token& stop) const;
};

/// What is drawn for each number that varies.
[[nodiscard]] std::vector<Drawn> drawnOf(const std::vector<Varying>& all);

/// Units of part `k` (from 1) of `m`.
struct Range {
    std::uint64_t first = 0, last = 0;
};
[[nodiscard]] Range partOf(std::uint64_t units, std::uint64_t k, std::uint64_t m) noexcept;

}  // namespace spread
