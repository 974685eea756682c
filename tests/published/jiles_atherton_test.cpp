// SPDX-License-Identifier: GPL-3.0-or-later
// Our loop against one of the other kind: a published set of parameters of the model of D. C. Jiles and D. L. Atherton,
// stepped here, and an alloy made of its curve from rest, coercivity and remanence.
//
// Parameters: J. Magn. Magn. Mater. 61 (1986) 48, as a public hysteresis library states them (seen). Equation as that
// library has it (seen):  dM/dH = (Ma - M) / [(1 + c)(d k - alpha (Ma - M))] + c / (1 + c) dMa/dHe, negative
// irreversible susceptibility taken as none, Ma Langevin's function of He = H + alpha M.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "magnetics/core_loop.h"
#include "magnetics/permeability.h"

namespace jiles_atherton_test {

constexpr double ms = 1.6e6, a = 1100, alpha = 1.6e-3, k = 400, c = 0.2;
constexpr double top = 6000, step = 2;

double langevin(double x) {
    return std::abs(x) < 1e-3 ? x / 3 : 1 / std::tanh(x) - 1 / x;
}
double langevinSlope(double x) {
    return std::abs(x) < 1e-3 ? 1.0 / 3 : 1 / (x * x) - 1 / (std::sinh(x) * std::sinh(x));
}

double slope(double field, double m, double direction) {
    const double x = (field + alpha * m) / a;
    const double lack = ms * langevin(x) - m;
    double irreversible = lack / (direction * k - alpha * lack);
    if (irreversible < 0) irreversible = 0;
    return (irreversible + c * ms * langevinSlope(x) / a) / (1 + c);
}

struct Point {
    double field, flux;
};

/// From one field to another by the classical method of Runge and Kutta; B at every step.
std::vector<Point> stepped(double from, double to, double& m) {
    const double d = to > from ? 1 : -1, h = d * step;
    std::vector<Point> points{{from, magnetics::mu0 * (from + m)}};
    const int count = static_cast<int>(std::lround(std::abs(to - from) / step));
    for (int i = 0; i < count; ++i) {
        const double field = from + i * h;
        const double k1 = slope(field, m, d), k2 = slope(field + h / 2, m + h / 2 * k1, d);
        const double k3 = slope(field + h / 2, m + h / 2 * k2, d), k4 = slope(field + h, m + h * k3, d);
        m += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        points.push_back({field + h, magnetics::mu0 * (field + h + m)});
    }
    return points;
}

struct Published {
    std::vector<Point> initial, falling;
    double coercivity = 0, remanence = 0, loss = 0;
};

Published published() {
    Published found;
    double m = 0;
    found.initial = stepped(0, top, m);
    stepped(top, -top, m);
    const auto rising = stepped(-top, top, m);
    found.falling = stepped(top, -top, m);
    for (const std::vector<Point>* branch : {&rising, static_cast<const std::vector<Point>*>(&found.falling)})
        for (std::size_t i = 1; i < branch->size(); ++i)
            found.loss +=
                ((*branch)[i].field + (*branch)[i - 1].field) / 2 * ((*branch)[i].flux - (*branch)[i - 1].flux);
    for (std::size_t i = 1; i < found.falling.size(); ++i) {
        const Point &now = found.falling[i], &before = found.falling[i - 1];
        if (now.field == 0) found.remanence = now.flux;
        if (now.flux <= 0 && before.flux > 0)
            found.coercivity = -(before.field + (now.field - before.field) * before.flux / (before.flux - now.flux));
    }
    return found;
}

/// An alloy with the curve from rest, coercivity and remanence of the published loop.
magnetics::CoreModel fitted(const Published& p) {
    magnetics::StackBlock block;
    block.initialPermeability = p.initial[1].flux / (magnetics::mu0 * p.initial[1].field);
    block.saturation = magnetics::mu0 * ms;
    const Point& foot = p.initial[20];  // 40 A/m: a tenth of the coercivity
    block.rayleigh = (foot.flux / (magnetics::mu0 * foot.field) - block.initialPermeability) / foot.field;
    block.coercivity = p.coercivity;
    block.remanence = p.remanence;
    for (std::size_t i = 0; i < p.initial.size(); i += i < 500 ? 25 : 100)
        block.curve.push_back({p.initial[i].field, p.initial[i].flux});
    magnetics::CoreModel core;
    core.area = 1e-4;
    core.pathLength = 0.1;
    core.blocks = {block};
    return core;
}

TEST(PublishedJilesAtherton, SetGivesItsLoop) {  // rows J-A1, J-A3, J-A4: derived
    const Published p = published();
    EXPECT_NEAR(p.coercivity / 407.334, 1, 1e-3);
    EXPECT_NEAR(p.remanence / 0.738239, 1, 1e-3);
    EXPECT_NEAR(p.loss / 2850.39, 1, 1e-3);
}

TEST(PublishedJilesAtherton, CoercivityAndRemanenceOfOursAreThePublished) {
    const Published p = published();
    const magnetics::CoreLoop loop(fitted(p));
    EXPECT_EQ(loop.why(), "");
    auto memory = loop.atRest();
    loop.follow(memory, top);
    EXPECT_NEAR(loop.follow(memory, 0).value / 0.738239, 1, 0.01);         // J-A1
    EXPECT_NEAR(loop.follow(memory, -407.334).value, 0, 0.01 * 1.733147);  // J-A1, J-A2
}

/// What two models with the same curve from rest, coercivity and remanence still leave open: plays keep their width
/// towards the tip, where the other's branches run together.
TEST(PublishedJilesAtherton, BranchesOfBothLieTogether) {
    const Published p = published();
    const magnetics::CoreLoop loop(fitted(p));
    auto memory = loop.atRest();
    double worstInitial = 0, worst = 0, square = 0;
    for (const Point& point : p.initial)
        worstInitial = std::max(worstInitial, std::abs(loop.follow(memory, point.field).value - point.flux));
    for (const Point& point : p.falling) {
        const double off = loop.follow(memory, point.field).value - point.flux;
        worst = std::max(worst, std::abs(off));
        square += off * off;
    }
    const double peak = p.initial.back().flux;
    EXPECT_LT(worstInitial, 0.001 * peak);  // the curve's own points, 50 A/m apart
    EXPECT_LT(worst, 0.09 * peak);
    EXPECT_LT(std::sqrt(square / double(p.falling.size())), 0.04 * peak);
}

TEST(PublishedJilesAtherton, LossesOfBothAreWithinAThird) {
    const Published p = published();
    const magnetics::CoreLoop loop(fitted(p));
    auto memory = loop.atRest();
    std::vector<double> field, flux;
    loop.follow(memory, top);
    for (int i = 0; i < 2000; ++i) {
        field.push_back(top * std::cos(2 * std::numbers::pi * i / 2000));
        flux.push_back(loop.follow(memory, field.back()).value);
    }
    EXPECT_NEAR(magnetics::loopArea(field, flux) / p.loss, 1, 1.0 / 3);
}

}  // namespace jiles_atherton_test
