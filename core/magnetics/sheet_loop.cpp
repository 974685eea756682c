// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/sheet_loop.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "magnetics/permeability.h"
#include "magnetics/rising_root.h"
#include "magnetics/saturation.h"

namespace magnetics {
namespace {

constexpr int curveSteps = 6;         // of a curve that is given by a formula
constexpr double closeEnough = 0.01;  // of a remanence that is met
constexpr int stepsBeyond = 6;        // beyond the end of a curve, each four times the field

/// Fields at which the initial curve is taken: the alloy's own points, or a grid through the formula's knee; then
/// into air.
std::vector<double> fieldsOf(const StackBlock& block) {
    std::vector<double> fields;
    if (block.curve.size() >= 2) {
        for (const catalog::BhPoint& point : block.curve) fields.push_back(point.field);
    } else {
        const double knee = block.saturation / (mu0 * block.initialPermeability);
        fields.push_back(0);
        for (int i = -3 * curveSteps; i <= 3 * curveSteps; ++i)
            fields.push_back(knee * std::pow(10.0, double(i) / curveSteps));
    }
    for (int i = 0; i < stepsBeyond; ++i) fields.push_back(4 * fields.back());
    return fields;
}

/// Greatest B / (mu0 H) of the points.
double greatestPermeability(const StackBlock& block) {
    double greatest = block.initialPermeability;
    for (const catalog::BhPoint& point : block.curve)
        if (point.field > 0) greatest = std::max(greatest, point.flux / (mu0 * point.field));
    return greatest;
}

/// Root of a function that rises in ln x between low and high, by halving and secants (Illinois rule, from memory).
template <class Function>
double root(double low, double high, const Function& f, double tolerance) {
    double x0 = std::log(low), x1 = std::log(high), y0 = f(low), y1 = f(high);
    if (y0 >= 0) return low;
    if (y1 <= 0) return high;
    int side = 0;
    for (int round = 0; round < 60 && x1 - x0 > tolerance; ++round) {
        const double x = (x0 * y1 - x1 * y0) / (y1 - y0);
        const double y = f(std::exp(x));
        if (y == 0) return std::exp(x);
        if (y < 0) {
            x0 = x;
            y0 = y;
            if (side == -1) y1 /= 2;
            side = -1;
        } else {
            x1 = x;
            y1 = y;
            if (side == 1) y0 /= 2;
            side = 1;
        }
        if (std::abs(y) < 1e-13) break;
    }
    return std::exp(side == -1 ? x0 : x1);
}

}  // namespace

SheetLoop::SheetLoop(const StackBlock& block) {
    for (const double field : fieldsOf(block)) {
        const CurvePlace place = curveAtField(block, field);
        points_.push_back({field, place.value, place.slope});
    }
    std::vector<OddCurve::Knot> knots;
    for (const Point& p : points_) knots.push_back({p.field, p.flux, p.slope});
    initial_ = OddCurve(knots);
    double nu = block.rayleigh;
    const bool wanted = block.coercivity > 0 && block.curve.size() >= 2;
    if (wanted && nu <= 0) {
        nu = (greatestPermeability(block) - block.initialPermeability) / block.coercivity;
        why_ = "Rayleigh's coefficient is estimated from coercivity and greatest permeability";
    }
    ratio_ = nu / block.initialPermeability;
    hysteretic_ = wanted && ratio_ > 0;
    take({});
    if (hysteretic_) fit(block.coercivity, block.remanence);
}

CurvePlace SheetLoop::compressed(double field) const noexcept {
    if (shape_.compression == 0) return {field, 1};
    const double x = shape_.compression * field;
    return {std::asinh(x) / shape_.compression, 1 / std::sqrt(1 + x * x)};
}

CurvePlace SheetLoop::kept(double flux) const noexcept {
    if (shape_.irreversible == 0) return {flux, 1};
    const double square = flux / shape_.irreversible * (flux / shape_.irreversible);
    const double sum = 1 + square * square;
    const double root = std::sqrt(std::sqrt(sum));
    return {flux / root, 1 / (sum * root)};
}

void SheetLoop::take(const Shape& shape) {
    shape_ = shape;
    plays_ = shape.slack > 0 ? Plays(shape.slack, ratio_) : Plays();
    std::vector<OddCurve::Knot> knots;
    for (const Point& p : points_) {
        const CurvePlace v = compressed(p.field), u = plays_.fromRest(v.value), b = kept(p.flux);
        knots.push_back({u.value, b.value, b.slope * initial_.at(p.field).slope / (u.slope * v.slope)});
    }
    anhysteretic_ = OddCurve(std::move(knots));
}

LoopPlace SheetLoop::at(const PlayMemory& memory, double field) const noexcept {
    if (!hysteretic_) return {initial_.at(field)};
    const CurvePlace v = compressed(field);
    const CurvePlace u = lookAhead(plays_, memory, v.value);
    const CurvePlace a = anhysteretic_.at(u.value);
    LoopPlace place{{a.value, a.slope * u.slope * v.slope}, a.slope, u.slope, v.slope};
    if (shape_.irreversible > 0) {
        const CurvePlace whole = initial_.at(field), part = kept(whole.value);
        place.value += whole.value - part.value;
        place.slope += whole.slope * (1 - part.slope);
    }
    return place;
}

void SheetLoop::follow(PlayMemory& memory, double field) const {
    if (hysteretic_) magnetics::follow(plays_, memory, compressed(field).value);
}

double SheetLoop::steepest() const noexcept {
    double steepest = initial_.at(0).slope;
    for (const Point& p : points_)
        if (p.field > 0) steepest = std::max(steepest, p.flux / p.field);
    return steepest;
}

LoopPlace SheetLoop::followWave(PlayMemory& memory, double& field, double wave, double weight, double tolerance) const {
    LoopPlace there;
    double seen = std::numeric_limits<double>::quiet_NaN();
    field = risingRoot(field, tolerance, [&](double tried) {
        there = at(memory, tried);
        seen = tried;
        return CurvePlace{there.value + weight * tried - wave, there.slope + weight};
    });
    if (seen != field) there = at(memory, field);
    follow(memory, field);
    return there;
}

/// Flux density at a field on the branch that falls from the end of the curve.
double SheetLoop::falling(double field) const {
    PlayMemory memory;
    follow(memory, points_[points_.size() - 1 - stepsBeyond].field);
    follow(memory, field);
    return at(memory, field).value;
}

/// Slack with which the falling branch passes zero at -coercivity; false if none does.
bool SheetLoop::fitSlack(Shape& shape, double coercivity) {
    const auto fluxThere = [&](double slack) {
        shape.slack = slack;
        take(shape);
        return falling(-coercivity);
    };
    const double measure =
        shape.compression == 0 ? coercivity : std::asinh(shape.compression * coercivity) / shape.compression;
    take(shape);
    shape.slack = root(measure / 30, 30 * measure, fluxThere, 1e-12);
    return std::abs(fluxThere(shape.slack)) < 1e-6 * points_.back().flux;
}

void SheetLoop::fit(double coercivity, double remanence) {
    const auto note = [&](const std::string& sentence) { why_ += (why_.empty() ? "" : "; ") + sentence; };
    Shape shape;
    bool closes = fitSlack(shape, coercivity);
    const double plain = falling(0);
    const double top = points_[points_.size() - 1 - stepsBeyond].flux;
    // One of the two gives way: which part turns reversibly, or how far the field is compressed.
    const auto vary = [&](double& parameter, double low, double high) {
        const auto excess = [&](double value) {
            parameter = value;
            closes = fitSlack(shape, coercivity);
            return falling(0) - remanence;
        };
        const auto met = [&](double value) { return std::abs(excess(value)) < closeEnough * remanence && closes; };
        if (met(root(low, high, excess, 1e-9))) return;
        // Far out no slack may make the coercivity; then as near as it is made.
        double best = 0, least = std::abs(plain - remanence);
        for (double value = low; value < high; value *= 1.2)
            if (const double off = std::abs(excess(value)); closes && off < least) {
                best = value;
                least = off;
            }
        if (best > 0 && met(root(best / 1.2, best * 1.2, excess, 1e-9))) return;
        excess(best);
    };
    if (remanence > 0 && remanence < plain)
        vary(shape.irreversible, remanence / 2, 20 * top);
    else if (remanence > plain)
        vary(shape.compression, 0.1 / coercivity, 20 / coercivity);
    remanence_ = falling(0);
    if (!closes) note("the loop does not reach the alloy's coercivity");
    if (remanence > 0 && std::abs(remanence_ / remanence - 1) > closeEnough)
        note("the loop misses the alloy's remanence");
}

}  // namespace magnetics
