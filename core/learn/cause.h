// SPDX-License-Identifier: GPL-3.0-or-later
// The likely cause of a unit's readings, or the causes that these readings cannot tell apart.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "learn/fault.h"
#include "shop/test_plan.h"
#include "spread/varying.h"

namespace learn {

/// One cause held against the readings.
struct Likely {
    FaultKind kind = FaultKind::None;
    std::string words;       ///< "turns shorted in P.a"
    std::string size;        ///< "about 3 turns"; "" where it has none
    double probability = 0;  ///< of all causes that were tried, after the readings
    double distance = 0;     ///< Mahalanobis distance of the readings at its likeliest size
};

/// A reading beside what good units read.
struct Deviation {
    std::string name, words;
    units::Kind unit = units::Kind::Number;
    double read = 0, expected = 0;
    double deviations = 0;  ///< in standard deviations of good units, as this bench reads them
};

/// A reading that was not taken and would part the causes of the first group.
struct NextReading {
    std::string words;
    double parts = 0;  ///< how far apart the causes of the group would read, in standard deviations
    bool planned = true;
};

struct Finding {
    bool faulty = false;         ///< some fault is likelier than none
    std::vector<Likely> group;   ///< what these readings cannot tell apart, likeliest first: together at least 98 %
    std::vector<Likely> others;  ///< the rest
    std::vector<Likely> hidden;  ///< of a unit without a fault: those of `others` that could be there unseen
    bool explained = true;       ///< false: not even the likeliest cause makes such readings
    std::size_t used = 0;        ///< numbers compared; a ratio counts twice, by size and by sign
    std::vector<Deviation> deviations;  ///< by size, greatest first
    std::optional<NextReading> next;    ///< nothing where no reading would part the group
    std::vector<std::string> unknown;   ///< readings that no probe is named: not used
};

/// Knows what good and faulty units of a design read.
///
/// Each cause is done to the design and the plan's readings are computed anew. Readings y, in the scales of `Probe`,
/// of a unit with fault h of size s are taken as normal with mean f_h(s) and covariance
///
///     S = sum_k g_k g_k^T + diag(u^2) + diag(m^2) + diag((r d + 0.04 d^2)^2),   d = |f_h(s) - f_0|
///
/// g_k what one standard deviation of the k-th varying number changes (law of propagation, JCGM 102:2011, 6.2), in a
/// good unit, or in one with the fault where that has no size and moves some reading by more than a factor e: what all
/// but cancels is spread otherwise. u is the instrument's, m the model's standard uncertainty, r = 5 % (where a fault
/// sits, and what is left where it cancels: our own rule). With readings of `good` units, n of them, f_0 is moved to
/// their mean and m^2 replaced by 1 / n of the first two terms. Probability by Bayes' rule: half for no fault, the rest
/// shared alike by the kinds of faults that the design can have, and within a kind by their places; a size is as likely
/// at any place of its path, along which f_h goes straight between the sizes computed. The integral over size is exact
/// for that (a normal density along a straight line).
class CauseFinder {
public:
    /// `design` is checked; about a hundred and fifty units are computed, on all threads.
    CauseFinder(const design::Design& design, const shop::PlanPrediction& prediction, const shop::TestPlan& plan,
                const catalog::Catalog& shop, const catalog::Tolerances& tolerances, const design::Fixture& fixture);
    ~CauseFinder();
    CauseFinder(const CauseFinder&) = delete;
    CauseFinder& operator=(const CauseFinder&) = delete;

    /// Throws units::BadInput, place "readings", where none of them is of this plan.
    [[nodiscard]] Finding find(const Readings& readings, const std::vector<Readings>& good = {}) const;

    /// For those who make units up: what is read of the nominal unit's faults, and of others.
    [[nodiscard]] const std::vector<Fault>& faults() const noexcept;
    [[nodiscard]] const spread::Variation& variation() const noexcept;
    /// Everything that can be read of a unit, without an instrument's error; ratios with their sign.
    [[nodiscard]] Readings readingsOf(const Unit& unit) const;
    /// The same with errors drawn: `deviate` gives standard normal numbers. `model` false: the model is right.
    [[nodiscard]] Readings measuredOf(const Unit& unit, const std::function<double()>& deviate, bool model) const;

private:
    struct Known;
    std::unique_ptr<const Known> known_;
};

/// Lines for people.
[[nodiscard]] std::string findingWords(const Finding& finding);

}  // namespace learn
