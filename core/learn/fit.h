// SPDX-License-Identifier: GPL-3.0-or-later
// The few unknowns of a design adjusted to what was measured.
#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "catalog/shop_tolerance.h"
#include "learn/probe.h"
#include "measured/measured_curve.h"
#include "shop/test_plan.h"

namespace learn {

/// A measured number.
struct Point {
    Probe probe;
    double reading = 0;  ///< SI; dB, degree
};

/// The readings of a plan's probes as points, without their signs.
[[nodiscard]] std::vector<Point> pointsOf(const std::vector<Probe>& probes, const Readings& readings);
/// What the last stage of a plan reads, as probes.
[[nodiscard]] std::vector<Probe> planProbes(const design::Design& design, const shop::PlanPrediction& prediction,
                                            const shop::TestPlan& plan, const catalog::Catalog& shop,
                                            const catalog::Tolerances& tolerances, const design::Fixture& fixture);
/// A measured curve as points, at most `mostCurvePoints` evenly over log f: a response from the source's EMF, or with
/// `relativeTo` from its own value there (then the curve must reach it), impedance and its angle at `port`. Other kinds
/// have none. `doubt`: standard uncertainty in dB, as a share, or in degrees.
inline constexpr std::size_t mostCurvePoints = 60;
[[nodiscard]] std::vector<Point> pointsOf(const measured::MeasuredCurve& curve, const design::Design& design,
                                          const design::HookUp& hookUp, const std::string& port, double doubt,
                                          std::optional<double> relativeTo = {});

/// What was learned of one unknown.
struct Learned {
    std::string key, words;
    double factor = 1;     ///< on what the design says
    double halfWidth = 0;  ///< of the factor, as a share, for 95 %
    double before = 0;     ///< the same before anything was measured: by the shop's tolerances
    bool told = false;     ///< the data tell it: they take away a third of the doubt or more
    bool atBound = false;
    std::string standIn;  ///< the unknown that it can hardly be told from; "" none
};

struct Fitted {
    std::vector<Learned> learned;
    std::size_t points = 0;
    double before = 0, after = 0;  ///< root mean square of deviations, each in its standard uncertainty
    double scale = 1;              ///< by which half widths were widened since points scatter more than they should
    bool settled = false;
    design::DesignPtr design;       ///< the given one with the factors in it
    std::vector<std::string> left;  ///< numbers that could not be written into it
};

/// Least squares over the unknowns' logarithms x, within bounds:
///
///     (y - f(x))^T S^-1 (y - f(x)) + sum (x / (2 s))^2,   S = diag(u^2) + sum over what is not fitted g g^T
///
/// y, f in the scales of `Probe`; u the instruments' uncertainties; g what one standard deviation of a number that
/// varies and is not fitted changes; s the shop's spread of the unknown: what the data say nothing of stays where it
/// was. Half widths are twice the standard uncertainty from the slopes at the end (JCGM 102:2011, 7.6; first order),
/// widened by the root of chi-squared per point where that is above 1 (R. Birge, 1932). `keys`: which, of
/// `unknownKeys`; empty: all that the design has. Throws units::BadInput: fewer points than unknowns, or none to fit.
/// `fine`: layers are cut as finely as the response needs.
[[nodiscard]] Fitted fitted(const design::Design& design, const std::vector<Point>& points,
                            const std::vector<std::string>& keys, const catalog::Catalog& shop,
                            const catalog::Tolerances& tolerances, bool fine, const std::stop_token& stop = {});

/// Lines for people: before and after, each unknown, what the data do not tell.
[[nodiscard]] std::string fittedWords(const Fitted& fitted);

}  // namespace learn
