// SPDX-License-Identifier: GPL-3.0-or-later
// What the readings of good units of a design are: nominal, and how they move together with all that varies.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "learn/numbers.h"
#include "learn/probe.h"
#include "shop/test_plan.h"
#include "spread/varying.h"

namespace learn {

/// The probes of a plan's last stage, and further ones that a bench can take; polarity behind each ratio. Standard
/// uncertainties: half of what the fixture's file says for 95 %, and half of the model's doubt.
[[nodiscard]] std::vector<Probe> probesOf(const design::Design& design, const shop::PlanPrediction& prediction,
                                          const shop::TestPlan& plan, const design::Fixture& fixture);

struct ReadingModel {
    std::vector<Probe> probes;
    spread::Variation variation;  ///< of the design in the fixture; its base is the nominal unit
    std::vector<double> nominal;  ///< readings, a probe each
    Vector scaled;                ///< the same in the probes' scales
    Matrix slopes;                ///< a probe a row, a cause that varies a column: change for one standard deviation
    /// Covariance of good units' readings in the probes' scales; instruments and model left out.
    [[nodiscard]] Matrix spread() const { return slopes * slopes.transpose(); }
};

/// The same without slopes: a single unit computed. An inductance that is read near or above the winding's own
/// resonance, more than a factor 1.5 off what the plan expects, is none and is left out.
[[nodiscard]] ReadingModel nominalModel(const design::Design& design, const shop::PlanPrediction& prediction,
                                        const shop::TestPlan& plan, const catalog::Catalog& shop,
                                        const catalog::Tolerances& tolerances, const design::Fixture& fixture);

/// The varying numbers are those of `shop::benchTolerances`; slopes by central differences over one standard
/// deviation. Probes whose nominal reading does not occur are left out. On all the machine's threads.
[[nodiscard]] ReadingModel readingModel(const design::Design& design, const shop::PlanPrediction& prediction,
                                        const shop::TestPlan& plan, const catalog::Catalog& shop,
                                        const catalog::Tolerances& tolerances, const design::Fixture& fixture);

/// Readings, a probe each, in the probes' scales.
[[nodiscard]] Vector scaledOf(const std::vector<Probe>& probes, const std::vector<double>& values);
/// Readings in their scales of a unit whose varying numbers have these values. Called from several threads, with a unit
/// of the thread's own.
using UnitReader = std::function<Vector(spread::UnitDesign& unit, const std::vector<double>& values)>;
/// A column for each independent cause (`spread::causesOf`: what a number has by itself, and what those of a lot have
/// in common), of the chosen varying numbers: half the change of what `read` gives between one standard deviation less
/// and more of each number than in `middle`, by the cause's weights; not a number where it does not occur. On all the
/// machine's threads.
[[nodiscard]] Matrix slopesOf(const spread::Variation& variation, const std::vector<std::size_t>& chosen,
                              const std::vector<double>& middle, const UnitReader& read);

/// Those of all that varies, about the nominal unit; of a number that makes some reading not occur nothing.
[[nodiscard]] Matrix slopesOfAll(const spread::Variation& variation, const UnitReader& read);

/// In the probes' scales, without a value where a reading is missing; what no probe is named is told in `unknown`.
/// Blanks and dots in names are alike.
[[nodiscard]] std::vector<double> scaledReadings(const std::vector<Probe>& probes, const Readings& readings,
                                                 std::vector<std::string>* unknown = nullptr);

}  // namespace learn
